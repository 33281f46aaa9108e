import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipAmount, clipMsAt, clipSeconds, clipTurn, lookTimeAt } from '../../engine/look/clip-time.ts';
import type { ScoredClip, ScoredLook } from '../../engine/look/score.ts';

function lookOf(lengthMilliseconds: number): ScoredLook {
  return { name: 'Ebb', lengthMilliseconds, dissolveMilliseconds: 0, clips: [] };
}

function clipOf(changes: Partial<ScoredClip>): ScoredClip {
  return {
    track: 0,
    clip: 0,
    pattern: 'still/1',
    zone: { name: 'all', count: 0, entries: [], places: new Int16Array() },
    startMilliseconds: 0,
    lengthMilliseconds: 1000,
    endless: false,
    opacity: 255,
    blend: 'normal',
    fadeInMilliseconds: 0,
    fadeOutMilliseconds: 0,
    program: { levels: [] as never, gradients: [], keyed: [], names: new Map() },
    ...changes,
  };
}

test('T2 time is floored to its tick, and the tick is looped', () => {
  expect(lookTimeAt(lookOf(1000), 59, 20)).toEqual({ ms: 40, loopMs: 40 });
  expect(lookTimeAt(lookOf(1000), 1019, 20)).toEqual({ ms: 1000, loopMs: 0 });
});

test('T2 where the length is no multiple of the tick, later loops are drawn at other places', () => {
  // Ticks of 20 ms in a look of 50 ms: 0 20 40 | 60 is 10 into the second loop, 100 is 0 into the third.
  const drawn = [0, 20, 40, 60, 80, 100].map((ms) => lookTimeAt(lookOf(50), ms, 20).loopMs);
  expect(drawn).toEqual([0, 20, 40, 10, 30, 0]);
});

test('T3 a clip is on from its start up to, not with, its end', () => {
  const clip = clipOf({ startMilliseconds: 200, lengthMilliseconds: 300 });
  const on = [180, 200, 480, 500].map((loopMs) => clipMsAt(clip, { ms: loopMs, loopMs }));
  expect(on).toEqual([null, 0, 280, null]);
});

test('T3 a clip starts anew with each loop, an endless one counts on', () => {
  const time = { ms: 5300, loopMs: 300 };
  expect(clipMsAt(clipOf({ startMilliseconds: 100 }), time)).toBe(200);
  expect(clipMsAt(clipOf({ startMilliseconds: 100, endless: true }), time)).toBe(5200);
  expect(clipMsAt(clipOf({ startMilliseconds: 6000, endless: true }), time)).toBeNull();
});

test('T4 seconds in 16.16, floored, never the difference of two converted times', () => {
  expect(clipSeconds(0)).toBe(0);
  expect(clipSeconds(1)).toBe(65);
  expect(clipSeconds(999)).toBe(65470);
  expect(clipSeconds(1000)).toBe(65536);
});

test('T4 an endless clip begins its time anew every nine hours', () => {
  const nineHours = 9 * 3_600_000;
  expect(clipSeconds(nineHours - 1)).toBe(32_399 * 65536 + 65470);
  expect(clipSeconds(nineHours)).toBe(0);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffffff }), (ms) => {
      const within = BigInt(ms) % BigInt(nineHours);
      const exact = (within / 1000n) * 65536n + ((within % 1000n) * 65536n) / 1000n;
      expect(clipSeconds(ms)).toBe(Number(exact));
      expect(clipSeconds(ms)).toBeLessThan(2 ** 31);
    }),
    { seed: 20260603, numRuns: 1000 },
  );
});

test('T5 a turn runs from 0 to 16383 through the clip', () => {
  const clip = clipOf({ lengthMilliseconds: 999 });
  const turn = (ms: number) => clipTurn(clip, lookOf(5000), { ms, loopMs: ms }, ms);
  expect([0, 1, 500, 998].map(turn)).toEqual([0, 16, 8200, 16367]);
});

test('T5 an endless clip turns with its look', () => {
  const clip = clipOf({ endless: true, startMilliseconds: 100 });
  expect(clipTurn(clip, lookOf(4000), { ms: 9000, loopMs: 1000 }, 8900)).toBe(4096);
});

test('T9 a fade in ends at full, a fade out ends with the clip', () => {
  const clip = clipOf({ fadeInMilliseconds: 100, fadeOutMilliseconds: 200 });
  // floor(20 * 255 / 100) = 51; 999 leaves 1 ms: floor(1 * 255 / 200) = 1; unit_mul(255, x) = x.
  expect([0, 20, 99, 100, 800, 801, 999].map((ms) => clipAmount(clip, ms))).toEqual([
    0, 51, 252, 255, 255, 253, 1,
  ]);
});

test('T9 an endless clip has no fade-out', () => {
  const clip = clipOf({ endless: true, fadeInMilliseconds: 100, fadeOutMilliseconds: 200 });
  expect([50, 999, 1000, 99_999].map((ms) => clipAmount(clip, ms))).toEqual([127, 255, 255, 255]);
});

test('T9 opacity comes first in the product, then the fade in, then the fade out', () => {
  const clip = clipOf({
    lengthMilliseconds: 100,
    opacity: 77,
    fadeInMilliseconds: 100,
    fadeOutMilliseconds: 100,
  });
  // At 30 ms: in floor(7650 / 100) = 76, out floor(70 * 255 / 100) = 178.
  // (77 * 76 + 77) >> 8 = 23; (23 * 178 + 23) >> 8 = 16.
  expect(clipAmount(clip, 30)).toBe(16);

  const fadesIn = { lengthMilliseconds: 1000, fadeInMilliseconds: 255 };
  // unit_mul(254, 1) = (254 + 254) >> 8 = 1, unit_mul(1, 254) = (254 + 1) >> 8 = 0.
  expect(clipAmount(clipOf({ ...fadesIn, opacity: 254 }), 1)).toBe(1);
  expect(clipAmount(clipOf({ ...fadesIn, opacity: 1 }), 254)).toBe(0);
  const fadesOut = { lengthMilliseconds: 1000, fadeOutMilliseconds: 255 };
  expect(clipAmount(clipOf({ ...fadesOut, opacity: 254 }), 999)).toBe(1);
  expect(clipAmount(clipOf({ ...fadesOut, opacity: 1 }), 1000 - 254)).toBe(0);
});

test('T9 a fade longer than its clip just does not come to its end', () => {
  const clip = clipOf({ lengthMilliseconds: 100, fadeInMilliseconds: 3_600_000 });
  expect(clipAmount(clip, 99)).toBe(0);
  expect(clipAmount(clipOf({ endless: true, fadeInMilliseconds: 3_600_000 }), 3_599_999)).toBe(254);
});
