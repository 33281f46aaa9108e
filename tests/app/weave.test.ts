/** Cloths and figures, against frames drawn one by one. Rules: app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { measure } from '../../app/web/worker/measure.ts';
import { soloScore, weave } from '../../app/web/worker/weave.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import type { Score } from '../../engine/look/score.ts';
import { reportPower } from '../../engine/power/report.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const score = scoreOf(samplePiece('moth-wings'));

/** Rows are borrowed, so each is copied before the next one is asked for. */
function copiedRows(
  from: Score,
  look: number,
  rows: number,
): { levels: Uint8Array; peakMilliamps: number }[] {
  const copies = [];
  for (const row of weave(from, { look, rows, brightness: 64, peaks: true })) {
    if (row !== null) copies.push({ levels: row.levels.slice(), peakMilliamps: row.peakMilliamps });
  }
  return copies;
}

describe('W5 a cloth', () => {
  const rows = 37;
  const look = 1;
  const length = score.looks[look]!.lengthMilliseconds;

  test('has in each row the frame at its time', () => {
    const cloth = copiedRows(score, look, rows);
    expect(cloth).toHaveLength(rows);
    for (const [row, { levels }] of cloth.entries()) {
      const ms = Math.floor((row * length) / rows);
      expect(levels).toEqual(frame(score, stillMoment(look, ms, 64)).levels);
    }
  });

  test('tells the highest current within each stretch of time', () => {
    const cloth = copiedRows(score, look, rows);
    const tick = score.piece.tickMilliseconds;
    for (const [row, { peakMilliamps }] of cloth.entries()) {
      const start = Math.floor((row * length) / rows);
      const end = Math.floor(((row + 1) * length) / rows);
      let peak = 0;
      for (let ms = start; ms < end; ms++) {
        if (ms !== start && ms % tick !== 0) continue;
        peak = Math.max(peak, frame(score, stillMoment(look, ms, 64)).milliamps);
      }
      expect(peakMilliamps).toBe(peak);
    }
  });

  test('without peaks draws one frame a row, and the same rows', () => {
    const quick = [...weave(score, { look, rows, brightness: 64, peaks: false })];
    expect(quick).toHaveLength(rows);
    const last = copiedRows(score, look, rows).at(-1)!;
    expect(quick.at(-1)!.levels).toEqual(last.levels);
  });

  test('of one clip shows that clip alone', () => {
    const { track, clip, zone } = score.looks[look]!.clips[0]!;
    const lit = new Set(zone.entries.map(({ pixel }) => pixel));
    const alone = copiedRows(soloScore(score, { look, track, clip }), look, rows);
    const everywhere = alone.flatMap(({ levels }) => [...levels.keys()].filter((at) => levels[at]! > 0));
    expect(everywhere.length).toBeGreaterThan(0);
    expect(everywhere.every((at) => lit.has(Math.floor(at / 3)))).toBe(true);
  });

  test('of a look of nine hours is woven from its rows alone', () => {
    const piece = structuredClone(score.piece);
    piece.looks[0]!.lengthMilliseconds = 9 * 3600 * 1000;
    const steps = [...weave(scoreOf(piece), { look: 0, rows: 20, brightness: 64, peaks: true })];
    expect(steps).toHaveLength(20);
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
