import fc from 'fast-check';
import { expect, test } from 'vitest';
import { easingNames, easingTable } from '../../engine/look/easing.ts';
import { type KeyedFormat, type KeyedParameter, keyedValue } from '../../engine/look/keyframes.ts';

const widest = 16383 * 65536;

function keyed(
  keys: readonly (readonly [ms: number, value: number, easing?: Int32Array])[],
  to: KeyedFormat = 'mediump',
  [min, max] = [-widest, widest],
): KeyedParameter {
  return {
    name: 'depth',
    keys: keys.map(([atMilliseconds, value, easing = easingTable('linear')]) => ({
      atMilliseconds,
      value,
      easing,
    })),
    min: min!,
    max: max!,
    to,
  };
}

test('T7 held before the first key and from the last one on', () => {
  const parameter = keyed([
    [100, 65536],
    [200, 131072],
  ]);
  expect([0, 99, 100].map((ms) => keyedValue(parameter, ms))).toEqual([65536, 65536, 65536]);
  expect([200, 201, 4_294_967_295].map((ms) => keyedValue(parameter, ms))).toEqual([131072, 131072, 131072]);
});

test('T7 one key is a constant', () => {
  const parameter = keyed([[500, -7]]);
  expect([0, 500, 9000].map((ms) => keyedValue(parameter, ms))).toEqual([-7, -7, -7]);
});

test('T7 half way, by hand, and floored below zero', () => {
  const rising = keyed([
    [0, 0],
    [1000, 65536],
  ]);
  expect(keyedValue(rising, 500)).toBe(32768);
  // x = floor(1 * 65536 / 1000) = 65.
  expect(keyedValue(rising, 1)).toBe(65);
  // -1 * 65 / 65536 is floored to -1.
  expect(
    keyedValue(
      keyed([
        [0, 0],
        [1000, -1],
      ]),
      1,
    ),
  ).toBe(-1);
});

test('T7 a step jumps at the very millisecond of the next key', () => {
  const late = keyed([
    [0, 1, easingTable('step-end')],
    [300, 9],
  ]);
  expect([0, 299, 300].map((ms) => keyedValue(late, ms))).toEqual([1, 1, 9]);
  const early = keyed([
    [0, 1, easingTable('step-start')],
    [300, 9],
  ]);
  expect([0, 1, 300].map((ms) => keyedValue(early, ms))).toEqual([9, 9, 9]);
});

test('T7 an easing may overshoot, the parameter may not', () => {
  const back = easingTable([0.3, -3, 0.7, 4]);
  const ends = [
    [0, 0, back],
    [1000, 65536],
  ] as const;
  const bounded = keyed(ends, 'mediump', [0, 65536]);
  const free = keyed(ends);
  const every = Array.from({ length: 100 }, (_, i) => i * 10);
  expect(Math.min(...every.map((ms) => keyedValue(free, ms)))).toBeLessThan(0);
  expect(Math.max(...every.map((ms) => keyedValue(free, ms)))).toBeGreaterThan(65536);
  expect(Math.min(...every.map((ms) => keyedValue(bounded, ms)))).toBe(0);
  expect(Math.max(...every.map((ms) => keyedValue(bounded, ms)))).toBe(65536);
});

test('T7 is what exact arithmetic gives, also at the widest values and longest ways', () => {
  const value = fc.integer({ min: -widest, max: widest });
  const time = fc.integer({ min: 0, max: 9 * 3_600_000 });
  const easing = fc.oneof(
    fc.constantFrom(...easingNames),
    fc.constantFrom([0, 4, 1, -4] as const, [0.5, -4, 0.5, 4] as const),
  );
  fc.assert(
    fc.property(
      value,
      value,
      fc.uniqueArray(time, { minLength: 3, maxLength: 3 }),
      easing,
      (a, b, times, name) => {
        const [t0, t, t1] = times.sort((x, y) => x - y) as [number, number, number];
        const table = easingTable(name);
        const x = (BigInt(t - t0) * 65536n) / BigInt(t1 - t0);
        const segment = Number(x >> 10n);
        const slope = BigInt(table[segment + 1]! - table[segment]!);
        const e = BigInt(table[segment]!) + ((slope * (x & 1023n)) >> 10n);
        const exact = BigInt(a) + ((BigInt(b - a) * e) >> 16n);
        const within = exact < -widest ? -widest : exact > widest ? widest : Number(exact);
        expect(
          keyedValue(
            keyed([
              [t0, a, table],
              [t1, b],
            ]),
            t,
          ),
        ).toBe(within);
      },
    ),
    { seed: 20260602, numRuns: 2000 },
  );
});

test('T8 the formats that patterns read', () => {
  const at = (value: number, to: KeyedFormat) => keyedValue(keyed([[0, value]], to), 0);
  expect(at(98304, 'mediump')).toBe(98304);
  expect(at(98304, 'lowp')).toBe(24576);
  expect(at(-1, 'lowp')).toBe(-1);
  expect(at(98304, 'whole')).toBe(1);
  expect(at(-98304, 'whole')).toBe(-2);
  expect(at(128 * 65536 + 65535, 'level')).toBe(Math.round((128 * 16384) / 255));
});

test('T8 a colour level in Q2.14 is rounded, 255 is one', () => {
  for (let level = 0; level < 256; level++) {
    const [exact, seen] = [(level * 16384) / 255, keyedValue(keyed([[0, level * 65536]], 'level'), 0)];
    expect(Math.abs(seen - exact)).toBeLessThan(0.5);
    // The chip's way to the same number.
    expect(seen).toBe(Math.floor((level * 32768 + 255) / 510));
  }
});
