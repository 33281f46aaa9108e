import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Player } from '../../engine/controls/player.ts';
import { borrowFrame, frame, stillMoment } from '../../engine/look/frame.ts';
import type { Moment } from '../../engine/look/moment.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

function scoreWith(changes: Partial<PieceInput>): Score {
  const { value, diagnostics } = prepareScore(pieceWith(changes));
  if (value === undefined) throw new Error(diagnostics[0]?.message);
  return value;
}

function scoreOf(file: string): Score {
  const { value: piece, diagnostics } = loadPiece(readFileSync(`samples/${file}`, 'utf8'));
  if (piece === undefined) throw new Error(diagnostics[0]?.message);
  const prepared = prepareScore(piece);
  if (prepared.value === undefined) throw new Error(prepared.diagnostics[0]?.message);
  return prepared.value;
}

const samples = readdirSync('samples').filter((file) => file.endsWith('.piece.json'));

/** A red lantern rail with its third lantern hidden, and one that follows the clip's time. */
const rail = scoreWith({
  lines: [lineOf(4, [2])],
  looks: [
    {
      name: 'Red',
      lengthMilliseconds: 1000,
      tracks: [
        { clips: [{ pattern: 'still/1', lengthMilliseconds: 1000, parameters: { tint: '#ff0000' } }] },
      ],
    },
    {
      name: 'Course',
      lengthMilliseconds: 1000,
      dissolveMilliseconds: 400,
      tracks: [
        {
          clips: [
            {
              pattern: 'still/1',
              lengthMilliseconds: 1000,
              parameters: {
                tint: {
                  keys: [
                    { atMilliseconds: 0, value: '#000000' },
                    { atMilliseconds: 1000, value: '#00c800' },
                  ],
                },
              },
            },
          ],
        },
      ],
    },
  ],
});

describe('frames', () => {
  test('T1 levels are in pixel order, drive in wire order, and a hidden pixel stays dark', () => {
    const { levels, drive, milliamps } = frame(rail, stillMoment(0, 0, 255));
    expect([...levels]).toEqual([255, 0, 0, 255, 0, 0, 0, 0, 0, 255, 0, 0]);
    expect([...drive]).toEqual([0, 255, 0, 0, 255, 0, 0, 0, 0, 0, 255, 0]);
    // 10.4 mA chip, 4 * 0.7 mA dark, three reds of 20 mA.
    expect(milliamps).toBeCloseTo(10.4 + 2.8 + 60, 9);
  });

  test('T7 T8 a keyed colour moves channel by channel on levels', () => {
    const greens = [0, 250, 500, 750, 980].map((ms) => frame(rail, stillMoment(1, ms, 255)).levels[1]);
    // At the tick of 240 ms x = floor(240 * 65536 / 1000) = 15728, and (200 * 15728) >> 16 = 47: floored
    // twice, a hair below 48. The level then enters and leaves the pattern unharmed.
    expect(greens).toEqual([0, 47, 100, 147, 195]);
  });

  test('T11 a dissolve mixes the two looks', () => {
    const moment: Moment = { ...stillMoment(1, 100, 255), leaving: { look: 0, ms: 700, mix: 63 } };
    // Green is (200 * 6553) >> 16 = 19 by now; (255 * (256 - 63)) >> 8 = 192, (19 * 64) >> 8 = 4.
    expect([...frame(rail, moment).levels.slice(0, 3)]).toEqual([192, 4, 0]);
  });

  test('T12 in blackout nothing but the resting current is left', () => {
    const { levels, drive, milliamps } = frame(rail, { ...stillMoment(0, 0, 255), blackout: true });
    expect([...levels, ...drive]).toEqual(Array(24).fill(0));
    expect(milliamps).toBeCloseTo(13.2, 9);
  });

  test('L5 in blackout the keep-alive floor still holds, on the hidden pixel too', () => {
    const awake = scoreWith({ lines: [lineOf(4, [2])], supply: { keepAliveMilliamps: 60 } });
    const { levels, drive, milliamps } = frame(awake, { ...stillMoment(0, 0, 255), blackout: true });
    expect([...levels]).toEqual(Array(12).fill(0));
    // 13.2 mA at rest; v * 240 mA / 255 >= 46.8 mA, so v >= 49.725.
    expect([...drive]).toEqual(Array(12).fill(50));
    expect(milliamps).toBeGreaterThanOrEqual(60);
  });

  test('T1 frame gives arrays of its own, borrowFrame the same one each time', () => {
    const first = frame(rail, stillMoment(0, 0, 255));
    const borrowed = borrowFrame(rail, stillMoment(0, 0, 255));
    expect(borrowed).toEqual(first);
    frame(rail, { ...stillMoment(0, 0, 255), blackout: true });
    expect(first.levels[0]).toBe(255);
    expect(borrowed.levels[0]).toBe(0);
  });
});

describe('laws', () => {
  const scores = samples.map(scoreOf);
  const moments: fc.Arbitrary<[Score, Moment]> = fc.constantFrom(...scores).chain((score) => {
    const look = fc.nat(score.looks.length - 1);
    const ms = fc.oneof(fc.nat(60_000), fc.integer({ min: 0, max: 0xffffffff }));
    const leaving = fc.option(fc.record({ look, ms, mix: fc.nat(254) }));
    const moment = fc.record({
      look,
      ms,
      brightness: fc.nat(255),
      blackout: fc.boolean(),
      paused: fc.boolean(),
      uptimeMs: fc.nat(),
      leaving,
    });
    return moment.map((one): [Score, Moment] => [score, one]);
  });

  test('there are samples to try', () => {
    expect(samples.length).toBeGreaterThan(0);
  });

  test('T1 a frame does not depend on what was drawn before', () => {
    fc.assert(
      fc.property(moments, moments, ([score, moment], [otherScore, other]) => {
        const first = frame(score, moment);
        frame(otherScore, other);
        expect(frame(score, moment)).toEqual(first);
      }),
      { seed: 20260611, numRuns: 200 },
    );
  });

  test('T1 nor on pause, uptime or where in a tick it is', () => {
    fc.assert(
      fc.property(moments, fc.boolean(), fc.nat(), ([score, moment], paused, uptimeMs) => {
        const tick = score.piece.tickMilliseconds;
        const ms = moment.ms - (moment.ms % tick);
        expect(frame(score, { ...moment, ms, paused, uptimeMs })).toEqual(frame(score, moment));
      }),
      { seed: 20260612, numRuns: 200 },
    );
  });

  test('T1 seeking equals playing: a player put at a moment goes on as the one that played there', () => {
    for (const score of scores) {
      const pressed = (ms: number) =>
        score.piece.controls.buttons.map((_, at) => at === 0 && ms % 2300 < 100);
      const played = new Player(score);
      let sought: Player | null = null;
      for (let ms = 1; ms <= 9200; ms++) {
        played.step(pressed(ms));
        sought?.step(pressed(ms));
        // By then the button has long come to rest, so that the moment says everything.
        if (ms % 2300 === 2000) {
          sought = new Player(score, ms);
          sought.put(played.moment());
        }
        if (sought === null || ms % 97 !== 0) continue;
        expect(sought.moment()).toEqual(played.moment());
        expect(frame(score, sought.moment())).toEqual(frame(score, played.moment()));
      }
      expect(sought).not.toBeNull();
    }
  });

  test('T2 without endless clips a look repeats itself after its length, where the tick divides it', () => {
    for (const score of scores) {
      for (const [index, look] of score.looks.entries()) {
        if (look.clips.some((clip) => clip.endless)) continue;
        if (look.lengthMilliseconds % score.piece.tickMilliseconds !== 0) continue;
        for (const ms of [0, 300, look.lengthMilliseconds - 20]) {
          const again = stillMoment(index, ms + 3 * look.lengthMilliseconds, 64);
          expect(frame(score, again).drive).toEqual(frame(score, stillMoment(index, ms, 64)).drive);
        }
      }
    }
  });

  test('L4 L6 no frame exceeds the limit, hidden pixels are dark, and the milliamps are those of the drive', () => {
    fc.assert(
      fc.property(moments, ([score, moment]) => {
        const { levels, drive, milliamps } = frame(score, moment);
        const { chipTenths, quiescentTenths, channelTenths, limitMilliamps } = score.current;
        expect(milliamps).toBeLessThanOrEqual(limitMilliamps);
        let expected = chipTenths / 10 + (score.pixels.length * quiescentTenths) / 10;
        for (const [index, pixel] of score.pixels.entries()) {
          for (const [channel, at] of score.output.order.entries()) {
            expected += ((drive[index * 3 + at]! / 255) * channelTenths[channel]!) / 10;
            if (pixel.hidden) expect(levels[index * 3 + channel]).toBe(0);
          }
        }
        expect(milliamps).toBeCloseTo(expected, 6);
      }),
      { seed: 20260613, numRuns: 200 },
    );
  });
});
