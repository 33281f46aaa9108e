import { expect, test } from 'vitest';
import { type BlendName, blendNames, blends, unitMix, unitMul } from '../../engine/look/blend.ts';

const bytes = Array.from({ length: 256 }, (_, value) => value);
/** Every seventeenth value, so that 0 and 255 are among them. */
const some = bytes.filter((value) => value % 17 === 0);
const odd = [0, 1, 2, 3, 63, 64, 127, 128, 129, 191, 200, 253, 254, 255];

test('T10 unit_mul is exact at 0 and 255 and never off by more than a step', () => {
  for (const a of bytes) {
    expect(unitMul(a, 255)).toBe(a);
    expect(unitMul(255, a)).toBe(a);
    expect(unitMul(a, 0)).toBe(0);
    expect(unitMul(0, a)).toBe(0);
    for (const b of bytes) {
      const error = Math.abs(unitMul(a, b) - (a * b) / 255);
      if (error >= 1) expect.fail(`unit_mul(${a}, ${b}) is off by ${error}`);
    }
  }
});

test('T10 the order of the arguments of unit_mul matters, and the first one is added', () => {
  expect(unitMul(2, 127)).toBe(1);
  expect(unitMul(127, 2)).toBe(1);
  expect(unitMul(1, 254)).toBe(0);
  expect(unitMul(254, 1)).toBe(1);
});

test('T10 unit_mix stays between its two levels, hits both ends and rises with the amount', () => {
  for (const d of odd) {
    for (const s of bytes) {
      expect(unitMix(d, s, 0)).toBe(d);
      expect(unitMix(d, s, 255)).toBe(s);
      let before = d;
      for (const a of some) {
        const mixed = unitMix(d, s, a);
        if (mixed < Math.min(d, s) || mixed > Math.max(d, s)) expect.fail(`${d} ${s} ${a}: ${mixed}`);
        if (d <= s ? mixed < before : mixed > before) expect.fail(`${d} ${s} ${a} turns back`);
        before = mixed;
      }
    }
  }
});

/**
 * W3C Compositing and Blending Level 1, section 9.1 (separable modes) and, for plus-lighter, Level 2:
 * Co = cs * as + cb * (1 - as) with cs replaced by B(cb, cs) over an opaque backdrop, in floating point.
 */
const formulas: Record<BlendName, (cb: number, cs: number, alpha: number) => number> = {
  normal: (cb, cs, alpha) => over(cb, cs, alpha),
  multiply: (cb, cs, alpha) => over(cb, cb * cs, alpha),
  screen: (cb, cs, alpha) => over(cb, cb + cs - cb * cs, alpha),
  darken: (cb, cs, alpha) => over(cb, Math.min(cb, cs), alpha),
  lighten: (cb, cs, alpha) => over(cb, Math.max(cb, cs), alpha),
  'plus-lighter': (cb, cs, alpha) => Math.min(1, cb + cs * alpha),
};

function over(cb: number, cs: number, alpha: number): number {
  return cs * alpha + cb * (1 - alpha);
}

test.each(blendNames)('T10 %s agrees with the formula of W3C Compositing within two levels', (name) => {
  let worst = 0;
  for (const d of [...some, ...odd]) {
    for (const s of [...some, ...odd]) {
      for (const a of [...some, ...odd]) {
        const exact = 255 * formulas[name](d / 255, s / 255, a / 255);
        worst = Math.max(worst, Math.abs(blends[name](d, s, a) - exact));
      }
    }
  }
  // Two floors, each less than one level off, and 256 for 255 in the mix.
  expect(worst).toBeLessThan(2);
});

test.each(blendNames)('T10 %s with amount 0 leaves every backdrop alone', (name) => {
  for (const d of bytes) for (const s of some) expect(blends[name](d, s, 0)).toBe(d);
});

test('T10 in every product the backdrop comes before the source, and the source before the amount', () => {
  // unit_mul(1, 254) = (254 + 1) >> 8 = 0, unit_mul(254, 1) = (254 + 254) >> 8 = 1.
  expect([blends.multiply(1, 254, 255), blends.multiply(254, 1, 255)]).toEqual([0, 1]);
  expect([blends.screen(254, 1, 255), blends.screen(1, 254, 255)]).toEqual([255, 254]);
  expect([blends['plus-lighter'](10, 1, 254), blends['plus-lighter'](10, 254, 1)]).toEqual([10, 11]);
});

test('T10 a few blends by hand', () => {
  // unit_mul(200, 100) = (20000 + 200) >> 8 = 78; mixed half: (200*128 + 78*129) >> 8 = 139.
  expect(blends.multiply(200, 100, 128)).toBe(139);
  // unit_mul(55, 155) = (8525 + 55) >> 8 = 33; 255 - 33 = 222.
  expect(blends.screen(200, 100, 255)).toBe(222);
  // unit_mul(100, 128) = (12800 + 100) >> 8 = 50.
  expect(blends['plus-lighter'](200, 100, 128)).toBe(250);
  expect(blends['plus-lighter'](230, 100, 128)).toBe(255);
});
