import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Easing, type EasingName, ease, easingNames, easingTable } from '../../engine/look/easing.ts';

/** The named curves as CSS Easing Functions Level 1, section 2.2, defines them. */
const cssCurves: Partial<Record<EasingName, [number, number, number, number]>> = {
  ease: [0.25, 0.1, 0.25, 1],
  'ease-in': [0.42, 0, 1, 1],
  'ease-out': [0, 0, 0.58, 1],
  'ease-in-out': [0.42, 0, 0.58, 1],
};

/**
 * y of cubic-bezier(x1, y1, x2, y2) at x, by De Casteljau's construction and Newton's method with halving
 * where it would leave the curve: another way than the engine's.
 */
function cubicBezier([x1, y1, x2, y2]: readonly number[], x: number): number {
  const along = (a: number, b: number, t: number) => {
    const mix = (p: number, q: number) => p + (q - p) * t;
    return mix(mix(mix(0, a), mix(a, b)), mix(mix(a, b), mix(b, 1)));
  };
  let low = 0;
  let high = 1;
  let t = x;
  for (let step = 0; step < 200; step++) {
    const error = along(x1!, x2!, t) - x;
    if (error > 0) high = t;
    else low = t;
    const slope = (along(x1!, x2!, t + 1e-6) - along(x1!, x2!, t - 1e-6)) / 2e-6;
    const newton = t - error / slope;
    t = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return along(y1!, y2!, t);
}

const sixteenths = Array.from({ length: 65 }, (_, i) => i);

test.each(Object.entries(cssCurves))('T6 the table of %s is the CSS curve at 65 places', (name, curve) => {
  const table = easingTable(name as EasingName);
  expect(table).toHaveLength(65);
  for (const i of sixteenths) {
    expect(Math.abs(table[i]! - 65536 * cubicBezier(curve, i / 64))).toBeLessThan(0.51);
  }
});

test.each(Object.entries(cssCurves))(
  'T6 between its places %s stays within 1/500 of the CSS curve',
  (name, curve) => {
    const table = easingTable(name as EasingName);
    let worst = 0;
    for (let x = 0; x < 65536; x += 97) {
      worst = Math.max(worst, Math.abs(ease(table, x) / 65536 - cubicBezier(curve, x / 65536)));
    }
    expect(worst).toBeLessThan(0.002);
  },
);

test('T6 known values: ease is 0.8024 half way, ease-in 0.3154, ease-in-out 0.5', () => {
  // From memory, as browsers' developer tools show them; ease-out is ease-in turned round.
  expect(ease(easingTable('ease'), 32768) / 65536).toBeCloseTo(0.8024, 3);
  expect(ease(easingTable('ease-in'), 32768) / 65536).toBeCloseTo(0.3154, 3);
  expect(ease(easingTable('ease-out'), 32768) / 65536).toBeCloseTo(1 - 0.3154, 3);
  expect(ease(easingTable('ease-in-out'), 32768) / 65536).toBeCloseTo(0.5, 4);
});

test('T6 linear is exact everywhere', () => {
  const table = easingTable('linear');
  for (let x = 0; x < 65536; x++) if (ease(table, x) !== x) expect.fail(`linear(${x}) = ${ease(table, x)}`);
});

test('T6 steps are exact everywhere, in the last segment too', () => {
  for (let x = 0; x < 65536; x += 13) {
    expect(ease(easingTable('step-start'), x)).toBe(65536);
    expect(ease(easingTable('step-end'), x)).toBe(0);
  }
  expect(ease(easingTable('step-end'), 65535)).toBe(0);
});

test('T6 every curve but the steps begins at 0 and ends at 65536', () => {
  const curves: Easing[] = easingNames.filter((name) => !name.startsWith('step'));
  curves.push([1, 4, 0, -4], [0, -4, 0, 4], [0, 0, 0, 0], [1, 0, 0, 1]);
  for (const curve of curves) {
    expect([easingTable(curve)[0], easingTable(curve)[64]]).toEqual([0, 65536]);
  }
});

test('T6 any cubic-bezier that a piece may hold is the CSS curve at its 65 places', () => {
  const unit = fc.double({ min: 0, max: 1, noNaN: true });
  const height = fc.double({ min: -4, max: 4, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(unit, height, unit, height), (curve) => {
      const table = easingTable(curve);
      for (const i of sixteenths.filter((i) => i % 3 === 0)) {
        // Where the curve is all but upright, a hair's breadth of x is much of y: compare within both.
        const near = [i / 64 - 1e-9, i / 64, i / 64 + 1e-9].map((x) =>
          x <= 0 ? 0 : x >= 1 ? 1 : cubicBezier(curve, x),
        );
        expect(table[i]! / 65536).toBeGreaterThan(Math.min(...near) - 2e-4);
        expect(table[i]! / 65536).toBeLessThan(Math.max(...near) + 2e-4);
      }
    }),
    { seed: 20260601, numRuns: 150 },
  );
});
