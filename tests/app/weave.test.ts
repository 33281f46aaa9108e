/** Cloths and figures, against frames drawn one by one. Rules: app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { measure } from '../../app/web/worker/measure.ts';
import {
  soloScore,
  type WeavePlan,
  type WovenRow,
  weaveCurrents,
  weaveRows,
} from '../../app/web/worker/weave.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import type { Score } from '../../engine/look/score.ts';
import { reportPower } from '../../engine/power/report.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const score = scoreOf(samplePiece('moth-wings'));

const rows = 37;
const look = 1;
const length = score.looks[look]!.lengthMilliseconds;
const loop: WeavePlan = { look, fromMs: 0, toMs: length, rows, brightness: 64 };

/** Rows are borrowed, so each is copied before the next one is asked for. */
function copiedRows(from: Score, plan: WeavePlan, firstRow = 0, count = plan.rows): WovenRow[] {
  const copies: WovenRow[] = [];
  for (const { row, levels } of weaveRows(from, plan, firstRow, count))
    copies.push({ row, levels: levels.slice() });
  return copies;
}

const currentsOf = (from: Score, plan: WeavePlan) =>
  [...weaveCurrents(from, plan)].filter((peak) => peak !== null);

describe('W5 a cloth', () => {
  test('has in each row the frame at its time', () => {
    const cloth = copiedRows(score, loop);
    expect(cloth).toHaveLength(rows);
    for (const { row, levels } of cloth) {
      const ms = Math.floor((row * length) / rows);
      expect(levels).toEqual(frame(score, stillMoment(look, ms, 64)).levels);
    }
  });

  test('of a stretch of the look begins and ends with it', () => {
    const stretch = { ...loop, fromMs: 700, toMs: 1700, rows: 10 };
    for (const { row, levels } of copiedRows(score, stretch)) {
      expect(levels).toEqual(frame(score, stillMoment(look, 700 + 100 * row, 64)).levels);
    }
  });

  test('that is gone on with from a row is the same in the end', () => {
    const whole = copiedRows(score, loop);
    const goneOn = copiedRows(score, loop, 30, rows);
    expect(goneOn.map(({ row }) => row).slice(0, 9)).toEqual([30, 31, 32, 33, 34, 35, 36, 0, 1]);
    expect([...goneOn].sort((a, b) => a.row - b.row)).toEqual(whole);
  });

  test('tells the highest current within each stretch of time', () => {
    const currents = currentsOf(score, loop);
    expect(currents).toHaveLength(rows);
    const tick = score.piece.tickMilliseconds;
    for (const [row, milliamps] of currents.entries()) {
      const start = Math.floor((row * length) / rows);
      const end = Math.floor(((row + 1) * length) / rows);
      let peak = 0;
      for (let ms = start; ms < end; ms++) {
        if (ms !== start && ms % tick !== 0) continue;
        peak = Math.max(peak, frame(score, stillMoment(look, ms, 64)).milliamps);
      }
      expect(milliamps).toBe(peak);
    }
  });

  test('of one clip shows that clip alone', () => {
    const { track, clip, zone } = score.looks[look]!.clips[0]!;
    const lit = new Set(zone.entries.map(({ pixel }) => pixel));
    const alone = copiedRows(soloScore(score, { look, track, clip }), loop);
    const everywhere = alone.flatMap(({ levels }) => [...levels.keys()].filter((at) => levels[at]! > 0));
    expect(everywhere.length).toBeGreaterThan(0);
    expect(everywhere.every((at) => lit.has(Math.floor(at / 3)))).toBe(true);
  });

  test('of a look of nine hours has its currents from its rows alone', () => {
    const piece = structuredClone(score.piece);
    piece.looks[0]!.lengthMilliseconds = 9 * 3600 * 1000;
    const long = { look: 0, fromMs: 0, toMs: 9 * 3600 * 1000, rows: 20, brightness: 64 };
    expect([...weaveCurrents(scoreOf(piece), long)]).toHaveLength(20);
  });
});

test('W16 the figures at the start brightness are those of the power report', () => {
  const steps = measure(score, score.piece.output.startBrightness);
  let step = steps.next();
  let yielded = 0;
  while (!step.done) {
    yielded += 1;
    step = steps.next();
  }
  const { looks, warnings } = reportPower(score);
  expect(step.value).toEqual({ looks, warnings });
  expect(yielded).toBeGreaterThan(1000);
});
