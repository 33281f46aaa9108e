/** Intervals by brute force: every interval of small numbers, and all that lies in it. */
import { describe, expect, test } from 'vitest';
import { divide, floorModulo, multiply, remainder } from '../../engine/fixed/arithmetic.ts';
import { type Range, rangeOf } from '../../engine/fixed/integers.ts';
import * as range from '../../engine/pattern/range.ts';
import { Chance } from '../support/generate/chance.ts';

const smallest = -6;
const largest = 6;

const intervals: Range[] = [];
for (let min = smallest; min <= largest; min++)
  for (let max = min; max <= largest; max++) intervals.push({ min, max });

const numbersIn = ({ min, max }: Range) => Array.from({ length: max - min + 1 }, (_, i) => min + i);

/** The least interval around all results. */
function exact(a: Range, b: Range, run: (x: number, y: number) => number): Range {
  let [min, max] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const x of numbersIn(a))
    for (const y of numbersIn(b)) {
      min = Math.min(min, run(x, y));
      max = Math.max(max, run(x, y));
    }
  return { min: min + 0, max: max + 0 };
}

type Case = readonly [
  name: string,
  bounds: (a: Range, b: Range) => Range,
  run: (x: number, y: number) => number,
];

const tight: readonly Case[] = [
  ['add', range.addRange, (x, y) => x + y],
  ['sub', range.subRange, (x, y) => x - y],
  ...[0, 1, 2, 5].map(
    (shift): Case => [
      `mul, shift ${shift}`,
      (a, b) => range.mulRange(a, b, shift),
      (x, y) => multiply(x, y, shift),
    ],
  ),
  ...[0, 1, 3].map(
    (shift): Case => [
      `div, shift ${shift}`,
      (a, b) => range.divRange(a, b, shift),
      (x, y) => divide(x, y, shift),
    ],
  ),
  ['min', range.minRange, Math.min],
  ['max', range.maxRange, Math.max],
  ...[0, 1, 3].map(
    (shift): Case => [`shl, shift ${shift}`, (a) => range.shlRange(a, shift), (x) => x * 2 ** shift],
  ),
  ...[0, 1, 3].map(
    (shift): Case => [
      `shr, shift ${shift}`,
      (a) => range.shrRange(a, shift),
      (x) => Math.floor(x / 2 ** shift),
    ],
  ),
];

const safe: readonly Case[] = [
  ['rem', range.remRange, remainder],
  ['mod', range.modRange, floorModulo],
];

describe('F16 intervals of small numbers', () => {
  test.each(tight)('%s is exactly as wide as its results', (_, bounds, run) => {
    for (const a of intervals)
      for (const b of intervals) {
        const { min, max } = bounds(a, b);
        const wanted = exact(a, b, run);
        if (min !== wanted.min || max !== wanted.max)
          expect({ min, max }, JSON.stringify([a, b])).toEqual(wanted);
      }
  });

  test.each(safe)('%s holds all its results, and is no wider than the divisor', (_, bounds, run) => {
    for (const a of intervals)
      for (const b of intervals) {
        const { min, max } = bounds(a, b);
        const wanted = exact(a, b, run);
        const size = Math.max(1, Math.abs(b.min), Math.abs(b.max));
        const isRight = min <= wanted.min && max >= wanted.max && min > -size && max < size;
        if (!isRight) expect({ min, max }, JSON.stringify([a, b])).toEqual(wanted);
      }
  });

  test('the hull, and what fits where', () => {
    for (const a of intervals)
      for (const b of intervals) {
        const both = range.hull(a, b);
        expect(range.within(a, both) && range.within(b, both)).toBe(true);
        expect(both.min === a.min || both.min === b.min).toBe(true);
        expect(both.max === a.max || both.max === b.max).toBe(true);
        expect(range.within(a, b)).toBe(numbersIn(a).every((x) => numbersIn(b).includes(x)));
      }
  });

  test('a range that does not fit may be anything once it has wrapped', () => {
    expect(range.wrapped({ min: -5, max: 32_767 }, 'i16')).toEqual({ min: -5, max: 32_767 });
    expect(range.wrapped({ min: -5, max: 32_768 }, 'i16')).toEqual(rangeOf.i16);
    expect(range.wrapped({ min: -1, max: 0 }, 'u32')).toEqual(rangeOf.u32);
  });
});

describe('F16 intervals of numbers of all sizes hold the results', () => {
  const sizes = { mul: [0, 2, 14, 16, 30], div: [0, 12, 14, 16, 18] };
  const large: readonly Case[] = [
    ...sizes.mul.map(
      (shift): Case => [
        `mul, shift ${shift}`,
        (a, b) => range.mulRange(a, b, shift),
        // Exact where 64 bits are needed: 53 are not enough to tell.
        (x, y) => Number((BigInt(x) * BigInt(y)) >> BigInt(shift)),
      ],
    ),
    ...sizes.div.map(
      (shift): Case => [
        `div, shift ${shift}`,
        (a, b) => range.divRange(a, b, shift),
        (x, y) => divide(x, y, shift),
      ],
    ),
    ...safe,
  ];

  test.each(large)('%s', (_, bounds, run) => {
    const chance = new Chance(3);
    const number = () => Math.floor((chance.next() - 0.5) * 2 ** (1 + chance.next() * 31));
    const interval = (): Range => {
      const [a, b] = [number(), number()];
      return { min: Math.min(a, b), max: Math.max(a, b) };
    };
    for (let i = 0; i < 3000; i++) {
      const [a, b] = [interval(), interval()];
      const { min, max } = bounds(a, b);
      const pick = (from: Range) =>
        chance.flip() ? chance.pick([from.min, from.max]) : chance.whole(from.min, from.max);
      for (let j = 0; j < 10; j++) {
        const [x, y] = [pick(a), pick(b)];
        const result = run(x, y);
        if (result < min || result > max)
          expect({ min, max }, `${x}, ${y} gives ${result}`).toBe('around it');
      }
    }
  });
});
