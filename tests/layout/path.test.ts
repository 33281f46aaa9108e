/** Paths and their lengths: against closed forms, against other programs, and against laws of their own. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaussLegendre, measureCubic, parameterAtLength } from '../../engine/layout/arc-length.ts';
import {
  type Cubic,
  cutCubic,
  lengthOfControls,
  type Place,
  pointOnCubic,
} from '../../engine/layout/cubic.ts';
import { lengthOfPath, type PathShape } from '../../engine/layout/path.ts';
import { pixelPlaces } from '../../engine/layout/shapes.ts';

type Four = readonly [Place, Place, Place, Place];

const cubic = ([start, firstControl, secondControl, end]: Four): Cubic => ({
  start,
  firstControl,
  secondControl,
  end,
});

/** A path of one curve or more: the start, then three points for each curve. */
function path(count: number, pitchMillimetres: number, start: Place, ...points: Place[]): PathShape {
  const curves = Array.from({ length: points.length / 3 }, (_, i) => {
    const [firstControl, secondControl, end] = points.slice(3 * i, 3 * i + 3).map(([x, y]) => [x, y]);
    return { firstControl, secondControl, end } as PathShape['curves'][number];
  });
  return { kind: 'path', count, start: [...start], curves, pitchMillimetres };
}

const places = (shape: PathShape): Place[] => pixelPlaces(shape).map(({ x, y }) => [x, y]);
const gap = (a: Place, b: Place) => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Straight from point to point of so many, evenly spaced by parameter: never longer than the curve. */
function chords(of: Cubic, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += gap(pointOnCubic(of, i / count), pointOnCubic(of, (i + 1) / count));
  return sum;
}

describe('the rule of sixteen nodes', () => {
  test('integrates every power up to the 31st exactly, as its theory says, and no further', () => {
    const error = (power: number) => {
      const sum = gaussLegendre.reduce(
        (total, [node, weight]) => total + weight * (node ** power + (-node) ** power),
        0,
      );
      return Math.abs(sum - (power % 2 === 1 ? 0 : 2 / (power + 1)));
    };
    for (let power = 0; power <= 31; power++) expect(error(power)).toBeLessThan(1e-15);
    expect(error(32)).toBeGreaterThan(1e-10);
  });
});

describe('lengths that are known', () => {
  test('a straight line as a cubic, also where the parameter does not run evenly', () => {
    expect(
      measureCubic(
        cubic([
          [0, 0],
          [100, 100],
          [200, 200],
          [300, 300],
        ]),
      ).length,
    ).toBeCloseTo(300 * Math.SQRT2, 10);
    expect(
      measureCubic(
        cubic([
          [0, 0],
          [10, 0],
          [20, 0],
          [300, 0],
        ]),
      ).length,
    ).toBeCloseTo(300, 10);
    expect(
      measureCubic(
        cubic([
          [0, 0],
          [0, 0],
          [300, 0],
          [300, 0],
        ]),
      ).length,
    ).toBeCloseTo(300, 10);
  });

  test('a line that runs back on itself is as long as the whole way', () => {
    // x = 90 t (1 - t): 22.5 there, and 22.5 back.
    expect(
      measureCubic(
        cubic([
          [0, 0],
          [30, 0],
          [30, 0],
          [0, 0],
        ]),
      ).length,
    ).toBeCloseTo(45, 9);
  });

  test('a parabola, by its closed form', () => {
    // y = x^2 from 0 to a, as a quadratic curve raised by one degree.
    for (const a of [0.5, 1, 7]) {
      const middle: Place = [a / 2, 0];
      const end: Place = [a, a * a];
      const towards = (from: Place): Place => [
        from[0] + ((middle[0] - from[0]) * 2) / 3,
        from[1] + ((middle[1] - from[1]) * 2) / 3,
      ];
      const length = (a / 2) * Math.sqrt(1 + 4 * a * a) + Math.asinh(2 * a) / 4;
      expect(measureCubic(cubic([[0, 0], towards([0, 0]), towards(end), end])).length).toBeCloseTo(
        length,
        12,
      );
    }
  });

  test('a quarter circle: the usual constant 0.5522847498 is at most 0.0273 % of the radius off', () => {
    // T. Goldapp, Approximation of circular arcs by cubic polynomials, Computer Aided Geometric Design 8 (1991):
    // 4/3 (sqrt 2 - 1) meets the middle of the arc, and lies outside of it by at most 2.73e-4 of the radius.
    const handle = (4 / 3) * (Math.SQRT2 - 1) * 100;
    expect(handle).toBeCloseTo(55.22847498, 8);
    const quarter = cubic([
      [100, 0],
      [100, handle],
      [handle, 100],
      [0, 100],
    ]);
    const { length } = measureCubic(quarter);
    expect(Math.abs(length / (50 * Math.PI) - 1)).toBeLessThan(2.73e-4);
    expect(length).toBeGreaterThan(50 * Math.PI);
    for (const [x, y] of places(path(21, length / 20, [100, 0], [100, handle], [handle, 100], [0, 100]))) {
      const radius = Math.hypot(x, y);
      expect(radius).toBeGreaterThan(100 - 1e-9);
      expect(radius).toBeLessThan(100.0273);
    }
  });

  /** mpmath 1.3, `quad` over 32 pieces with 40 digits; the point at a third of the length by `findroot`. */
  const measured: readonly [Four, length: number, third: Place][] = [
    [
      [
        [0, 0],
        [20, 120],
        [180, -60],
        [240, 30],
      ],
      279.55722998641744,
      [68.17692749788441, 38.69309844295563],
    ],
    [
      [
        [0, 0],
        [300, 200],
        [-60, 200],
        [240, 0],
      ],
      421.1158815488388,
      [106.8955315894416, 90.21994089912749],
    ],
    [
      [
        [10, -5],
        [10, -5],
        [90, 40],
        [60, 120],
      ],
      146.9687451275121,
      [46.26835713825686, 27.52401183105434],
    ],
  ];
  test.each(measured)('of %j, as another program has it', (four, length, third) => {
    const [start, ...rest] = four;
    expect(measureCubic(cubic(four)).length).toBeCloseTo(length, 11);
    const [x, y] = places(path(2, length / 3, start, ...rest))[1]!;
    expect(x).toBeCloseTo(third[0], 11);
    expect(y).toBeCloseTo(third[1], 11);
  });
});

const millimetres = fc.integer({ min: -3000, max: 3000 }).map((tenths) => tenths / 10);
const place = fc.tuple(millimetres, millimetres);
/** With control points on top of each other as often as hands put them there. */
const four: fc.Arbitrary<Four> = fc
  .tuple(fc.array(place, { minLength: 1, maxLength: 4 }), fc.tuple(...Array(4).fill(fc.nat(3))))
  .map(([of, picks]) => (picks as number[]).map((pick) => of[pick % of.length]!) as unknown as Four);
const runs = { seed: 552_284, numRuns: 300 };

describe('any curve', () => {
  test('is longer than its chords, and hardly longer than many of them', () => {
    fc.assert(
      fc.property(four, (points) => {
        const { length } = measureCubic(cubic(points));
        const many = chords(cubic(points), 1000);
        expect(length).toBeGreaterThan(many - 1e-9);
        // A chord misses at most what its curve bends: at a cusp 6 h^2 of the way along the control points.
        expect(length - many).toBeLessThan(2e-5 * lengthOfControls(cubic(points)) + 1e-9);
      }),
      runs,
    );
  });

  test('is as long as its two parts, wherever it is cut', () => {
    fc.assert(
      fc.property(four, fc.integer({ min: 1, max: 99 }), (points, percent) => {
        const whole = measureCubic(cubic(points)).length;
        const [before, after] = cutCubic(cubic(points), percent / 100);
        expect(measureCubic(before).length + measureCubic(after).length).toBeCloseTo(whole, 9);
      }),
      runs,
    );
  });

  test('has passed so many millimetres where they are sought', () => {
    fc.assert(
      fc.property(four, fc.integer({ min: 0, max: 100 }), (points, percent) => {
        const curve = measureCubic(cubic(points));
        const wanted = (curve.length * percent) / 100;
        const at = parameterAtLength(curve, wanted);
        expect(at).toBeGreaterThanOrEqual(0);
        expect(at).toBeLessThanOrEqual(1);
        expect(measureCubic(cutCubic(cubic(points), at)[0]).length).toBeCloseTo(wanted, 9);
      }),
      runs,
    );
  });
});

describe('a path', () => {
  test('of straight pieces places its pixels around the corners by the millimetre', () => {
    const corner = path(6, 5, [0, 0], [4, 0], [8, 0], [12, 0], [12, 4], [12, 8], [12, 12]);
    const wanted: Place[] = [
      [0, 0],
      [5, 0],
      [10, 0],
      [12, 3],
      [12, 8],
      [12, 13],
    ];
    for (const [i, at] of places(corner).entries()) expect(gap(at, wanted[i]!)).toBeLessThan(1e-9);
  });

  test('goes on straight behind its end, in the direction in which it arrived', () => {
    const [, , , last] = places(path(4, 100, [0, 0], [0, 50], [50, 100], [100, 100]));
    const behind = 300 - lengthOfPath(path(1, 1, [0, 0], [0, 50], [50, 100], [100, 100]));
    expect(gap(last!, [100 + behind, 100])).toBeLessThan(1e-9);
  });

  test('with control points drawn in at its end arrives from where it can', () => {
    const end: Place = [30, 40];
    for (const line of [path(2, 100, [0, 0], [0, 0], end, end), path(2, 100, [0, 0], end, end, end)]) {
      expect(gap(places(line)[1]!, [60, 80])).toBeLessThan(1e-9);
    }
    const standing = path(2, 100, [0, 0], [10, 0], [20, 0], [30, 0], [30, 0], [30, 0], [30, 0]);
    expect(gap(places(standing)[1]!, [100, 0])).toBeLessThan(1e-9);
  });

  test('that is a single point leads to the right', () => {
    const spot: Place = [7, 9];
    expect(places(path(3, 10, spot, spot, spot, spot))).toEqual([
      [7, 9],
      [17, 9],
      [27, 9],
    ]);
  });

  test('with a cusp is measured as well as any', () => {
    // The speed of (0, 0), (100, 100), (0, 100), (100, 0) falls to 0 at its middle; mpmath 1.3, 40 digits.
    const { length } = measureCubic(
      cubic([
        [0, 0],
        [100, 100],
        [0, 100],
        [100, 0],
      ]),
    );
    expect(length).toBeCloseTo(182.84271247461902, 9);
  });

  test('never has neighbours farther apart than its pitch', () => {
    fc.assert(
      fc.property(four, four, fc.integer({ min: 1, max: 400 }), ([start, ...one], [, ...two], tenths) => {
        const at = places(path(40, tenths / 10, start, ...one, ...two));
        expect(at[0]).toEqual([...start]);
        for (let i = 1; i < at.length; i++) expect(gap(at[i - 1]!, at[i]!)).toBeLessThan(tenths / 10 + 1e-9);
      }),
      runs,
    );
  });

  test('of two thousand pixels on many curves takes a moment, not a second', () => {
    const points = Array.from({ length: 3 * 256 }, (_, i): Place => [i * 3, 40 * Math.sin(i)]);
    expect(places(path(2000, 4, [0, 0], ...points))).toHaveLength(2000);
  });
});
