/** The kernels against mathematics in 64 bit floats, with the worst error that each one's description states. */
import { describe, expect, test } from 'vitest';
import { rangeOf } from '../../engine/fixed/integers.ts';
import { kernelNames, kernels } from '../../engine/fixed/kernels.ts';
import { Chance } from '../support/generate/chance.ts';

const draws = 200_000;

/** Numbers of all sizes alike: as many between 1 and 2 as between 1000 and 2000. */
const anySize = (chance: Chance, bits: number) => Math.floor(2 ** (chance.next() * bits));
const signed = (chance: Chance, value: number) => (chance.flip() ? value : -value);

describe('F10 kernels', () => {
  test('sine: every angle, to 1e-4', () => {
    let worst = 0;
    for (let turn = 0; turn < 65_536; turn++) {
      const error = kernels.sine.evaluate(turn) / 16_384 - Math.sin((turn / 65_536) * 2 * Math.PI);
      worst = Math.max(worst, Math.abs(error));
    }
    expect(worst).toBeLessThan(1e-4);
    expect([0, 16_384, 32_768, 49_152].map((turn) => kernels.sine.evaluate(turn) + 0)).toEqual([
      0, 16_384, 0, -16_384,
    ]);
  });

  test('soft step: every position, to three steps of 1/16384', () => {
    let worst = 0;
    for (let position = -32_768; position < 32_768; position++) {
      const t = Math.min(1, Math.max(0, position / 16_384));
      worst = Math.max(worst, Math.abs(kernels.soft.evaluate(position) - 16_384 * t * t * (3 - 2 * t)));
    }
    expect(worst).toBeLessThan(3);
    expect([-5, 0, 8192, 16_384, 20_000].map((one) => kernels.soft.evaluate(one))).toEqual([
      0, 0, 8192, 16_384, 16_384,
    ]);
  });

  test('root: the largest whole number whose square is not beyond', () => {
    const chance = new Chance(1);
    const squares = Array.from({ length: 65_536 }, (_, i) => i * i).flatMap((square) => [
      square - 1,
      square,
      square + 1,
    ]);
    const numbers = [...squares, rangeOf.u32.max, ...chance.list(draws, () => anySize(chance, 32))];
    for (const number of numbers.filter((one) => one >= 0 && one <= rangeOf.u32.max)) {
      const root = kernels.root.evaluate(number);
      if (root * root > number || (root + 1) ** 2 <= number)
        expect(root, String(number)).toBe(Math.sqrt(number));
    }
  });

  test('root of 16.16: rounded down, 0 below 0', () => {
    const chance = new Chance(2);
    for (const number of [1, 2, rangeOf.i32.max, ...chance.list(draws, () => anySize(chance, 31))]) {
      const root = BigInt(kernels.rootMedium.evaluate(number));
      const square = BigInt(number) * 65_536n;
      if (root * root > square || (root + 1n) ** 2n <= square) expect(root, String(number)).toBe('its root');
    }
    expect([0, -1, rangeOf.i32.min].map((one) => kernels.rootMedium.evaluate(one))).toEqual([0, 0, 0]);
  });

  test.each([2, 3] as const)('length of %i: rounded down, off by a step or one part in 6,000', (count) => {
    const chance = new Chance(count);
    const evaluate = kernels[`length${count}`].evaluate;
    for (let i = 0; i < draws; i++) {
      const bits = 1 + chance.next() * 30;
      const parts = chance.list(count, () => signed(chance, anySize(chance, bits)));
      const exact = Math.hypot(...parts);
      if (exact > rangeOf.i32.max) continue;
      const length = evaluate(...parts);
      const isNear = length <= exact + 1e-6 && length > exact - Math.max(1, exact / 6000);
      if (!isNear) expect(length, parts.join()).toBe(exact);
    }
    const most = Array.from({ length: count }, () => rangeOf.i32.min);
    expect(evaluate(...most)).toBe(rangeOf.i32.max);
    expect(evaluate(...most.map(() => 0))).toBe(0);
    expect(evaluate(...[3000, -4000, 0].slice(0, count))).toBe(5000);
  });

  test('2 to a power: to one step and two parts in 100,000', () => {
    const chance = new Chance(4);
    for (let i = 0; i < draws; i++) {
      const x = chance.whole(-18 * 65_536, 15 * 65_536 - 1);
      const exact = 2 ** (x / 65_536) * 65_536;
      const power = kernels.exp2.evaluate(x);
      const error = Math.abs(power - exact);
      if (error > 1 + exact * 2.1e-5) expect(power, String(x)).toBe(exact);
    }
    expect([0, 65_536, -65_536, 3 * 65_536].map((one) => kernels.exp2.evaluate(one))).toEqual([
      65_536, 131_072, 32_768, 524_288,
    ]);
    expect([15 * 65_536, rangeOf.i32.max].map((one) => kernels.exp2.evaluate(one))).toEqual([
      rangeOf.i32.max,
      rangeOf.i32.max,
    ]);
    expect(kernels.exp2.evaluate(rangeOf.i32.min)).toBe(0);
  });

  test('logarithm to the base 2: to 9e-5', () => {
    const chance = new Chance(5);
    let worst = 0;
    for (const x of [1, 2, 3, rangeOf.i32.max, ...chance.list(draws, () => anySize(chance, 31))]) {
      worst = Math.max(worst, Math.abs(kernels.log2.evaluate(x) / 65_536 - Math.log2(x / 65_536)));
    }
    expect(worst).toBeLessThan(9e-5);
    expect([65_536, 131_072, 1].map((one) => kernels.log2.evaluate(one))).toEqual([0, 65_536, -16 * 65_536]);
    expect([0, -1, rangeOf.i32.min].map((one) => kernels.log2.evaluate(one))).toEqual([
      -1_048_576, -1_048_576, -1_048_576,
    ]);
  });

  test('angle: to 2.2 parts of 65,536 of a turn', () => {
    const chance = new Chance(6);
    let worst = 0;
    for (let i = 0; i < draws; i++) {
      const bits = 1 + chance.next() * 30;
      const [y, x] = chance.list(2, () => signed(chance, anySize(chance, bits))) as [number, number];
      // Round the circle -32768 and 32767 are neighbours.
      const error = Math.abs(kernels.angle.evaluate(y, x) - (Math.atan2(y, x) / (2 * Math.PI)) * 65_536);
      worst = Math.max(worst, Math.min(error, 65_536 - error));
    }
    expect(worst).toBeLessThan(2.2);
    const compass = [
      [0, 1],
      [1, 1],
      [1, 0],
      [1, -1],
      [0, -1],
      [-1, -1],
      [-1, 0],
      [-1, 1],
    ] as const;
    expect(compass.map(([y, x]) => kernels.angle.evaluate(y, x))).toEqual([
      0, 8192, 16_384, 24_576, 32_767, -24_576, -16_384, -8192,
    ]);
    expect(kernels.angle.evaluate(0, 0)).toBe(0);
  });

  test('hash: each value once, and half of the bits flip', () => {
    const values = Array.from({ length: 65_536 }, (_, i) => kernels.hash.evaluate(i));
    expect(new Set(values).size).toBe(65_536);
    let squares = 0;
    for (let input = 0; input < 16; input++)
      for (let output = 0; output < 16; output++) {
        let flips = 0;
        values.forEach((value, i) => {
          flips += ((value ^ values[i ^ (1 << input)]!) >> output) & 1;
        });
        const share = flips / 65_536;
        expect(share, `input ${input}, output ${output}`).toBeGreaterThan(0.35);
        expect(share, `input ${input}, output ${output}`).toBeLessThan(0.65);
        squares += (share - 0.5) ** 2;
      }
    // Root mean square distance from a half: common practice, no source.
    expect(Math.sqrt(squares / 256)).toBeLessThan(0.05);
  });

  test('hash of two: neighbours in a row and in a column have nothing in common', () => {
    const part = (a: number, b: number) => kernels.hash2.evaluate(a, b) / 65_536 - 0.5;
    let [across, up, size] = [0, 0, 0];
    for (let a = 0; a < 128; a++)
      for (let b = 0; b < 128; b++) {
        across += part(a, b) * part(a + 1, b);
        up += part(a, b) * part(a, b + 1);
        size += part(a, b) ** 2;
      }
    expect(size / 128 ** 2).toBeCloseTo(1 / 12, 2);
    expect(Math.abs(across / size)).toBeLessThan(0.05);
    expect(Math.abs(up / size)).toBeLessThan(0.05);
  });
});

describe('F12 the ranges of kernels hold their results', () => {
  test.each(kernelNames)('%s', (name) => {
    const { takes, gives, evaluate, range } = kernels[name];
    const chance = new Chance(9);
    for (let i = 0; i < 4000; i++) {
      const bounds = takes.map((type) => {
        const { min, max } = rangeOf[type];
        const size = anySize(chance, type.endsWith('16') ? 16 : 32);
        const low = Math.min(
          max,
          Math.max(min, chance.flip(0.3) ? chance.whole(min, max) : signed(chance, size)),
        );
        const width = chance.flip(0.2) ? max : anySize(chance, type.endsWith('16') ? 16 : 32) - 1;
        return { min: low, max: Math.min(max, low + width) };
      });
      const proved = range(...bounds);
      expect(proved.min).toBeGreaterThanOrEqual(rangeOf[gives].min);
      expect(proved.max).toBeLessThanOrEqual(rangeOf[gives].max);
      for (let pick = 0; pick < 12; pick++) {
        const values = bounds.map(({ min, max }) =>
          chance.flip(0.4) ? chance.pick([min, Math.min(min + 1, max), max]) : chance.whole(min, max),
        );
        const result = evaluate(...values);
        if (result < proved.min || result > proved.max)
          expect(proved, `${values} in ${JSON.stringify(bounds)} gives ${result}`).toBe('around it');
      }
    }
  });
});
