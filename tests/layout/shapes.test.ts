/** Shapes against school geometry and against hand-calculated places. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../engine/layout/layout.ts';
import { pixelCount, pixelPlaces } from '../../engine/layout/shapes.ts';
import type { Shape } from '../../engine/piece/schema.ts';

type Of<Kind extends Shape['kind']> = Extract<Shape, { kind: Kind }>;

const straight = (more: Partial<Of<'straight'>> = {}): Of<'straight'> => ({
  kind: 'straight',
  count: 4,
  start: [10, 20],
  pitchMillimetres: 5,
  directionDegrees: 0,
  ...more,
});
const ring = (more: Partial<Of<'ring'>> = {}): Of<'ring'> => ({
  kind: 'ring',
  count: 12,
  centre: [0, 0],
  diameterMillimetres: 200,
  firstDegrees: 90,
  clockwise: true,
  flattening: 1,
  ...more,
});
const arc = (more: Partial<Of<'arc'>> = {}): Of<'arc'> => ({
  kind: 'arc',
  count: 5,
  centre: [0, 0],
  radiusMillimetres: 100,
  firstDegrees: 180,
  lastDegrees: 0,
  ...more,
});
const grid = (more: Partial<Of<'grid'>> = {}): Of<'grid'> => ({
  kind: 'grid',
  columns: 3,
  rows: 2,
  start: [0, 0],
  pitchMillimetres: 10,
  directionDegrees: 0,
  order: 'rows',
  ...more,
});

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const steps = (points: readonly Point[]) => points.slice(1).map((point, i) => distance(points[i]!, point));
const sum = (points: readonly Point[]) =>
  points.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });

function expectPlaces(shape: Shape, places: readonly (readonly [x: number, y: number])[]): void {
  const actual = pixelPlaces(shape);
  expect(actual).toHaveLength(places.length);
  for (const [i, [x, y]] of places.entries()) {
    expect(actual[i]!.x, `x of ${i}`).toBeCloseTo(x, 6);
    expect(actual[i]!.y, `y of ${i}`).toBeCloseTo(y, 6);
  }
}

describe('straight', () => {
  test('to the right', () => {
    expectPlaces(straight(), [
      [10, 20],
      [15, 20],
      [20, 20],
      [25, 20],
    ]);
  });
  test('upwards: y grows', () => {
    expectPlaces(straight({ directionDegrees: 90 }), [
      [10, 20],
      [10, 25],
      [10, 30],
      [10, 35],
    ]);
  });
  test('hanging down, without a stray sideways part', () => {
    const hanging = pixelPlaces(straight({ start: [0, 0], directionDegrees: -90, count: 2000 }));
    expect(new Set(hanging.map(({ x }) => Math.abs(x)))).toEqual(new Set([0]));
    expect(hanging.at(-1)!.y).toBe(-1999 * 5);
  });
  test('at 30 degrees: cos 30 = sqrt(3)/2, sin 30 = 1/2', () => {
    const last = pixelPlaces(straight({ start: [0, 0], directionDegrees: 30 })).at(-1)!;
    expect(last.x).toBeCloseTo((15 * Math.sqrt(3)) / 2, 9);
    expect(last.y).toBeCloseTo(7.5, 9);
  });
  test('turning by 390 is turning by 30', () => {
    expect(pixelPlaces(straight({ directionDegrees: 390 }))).toEqual(
      pixelPlaces(straight({ directionDegrees: 30 })),
    );
  });
});

describe('ring', () => {
  test('begins at the top and runs clockwise, as a clock does', () => {
    const hours = pixelPlaces(ring());
    expect(hours[0]).toEqual({ x: 0, y: 100 });
    expect(hours[3]).toEqual({ x: 100, y: 0 });
    expect(hours[6]).toEqual({ x: 0, y: -100 });
    expect(hours[9]).toEqual({ x: -100, y: 0 });
    expect(hours[1]!.x).toBeCloseTo(50, 9);
    expect(hours[1]!.y).toBeCloseTo(50 * Math.sqrt(3), 9);
  });
  test('counter-clockwise from the right', () => {
    const places = pixelPlaces(ring({ count: 4, firstDegrees: 0, clockwise: false }));
    expect(places).toEqual([
      { x: 100, y: 0 },
      { x: 0, y: 100 },
      { x: -100, y: 0 },
      { x: 0, y: -100 },
    ]);
  });
  test('every chord is 2 r sin(180/n), the last one back to the first too; they sum to nearly the circumference', () => {
    for (const count of [3, 7, 60, 1999]) {
      const places = pixelPlaces(ring({ count, firstDegrees: 17 }));
      const chords = steps([...places, places[0]!]);
      const chord = 200 * Math.sin(Math.PI / count);
      for (const length of chords) expect(length).toBeCloseTo(chord, 6);
      // Archimedes: the polygon inside of a circle is shorter, by about pi^2 / 6 n^2 of it.
      const circumference = Math.PI * 200;
      const polygon = chords.reduce((a, b) => a + b, 0);
      expect(polygon).toBeLessThan(circumference);
      expect(polygon).toBeGreaterThan(circumference * (1 - Math.PI ** 2 / (6 * count ** 2)) - 1e-6);
    }
  });
  test('is balanced about its centre', () => {
    const middle = sum(pixelPlaces(ring({ count: 17, centre: [30, -40], firstDegrees: 5 })));
    expect(middle.x / 17).toBeCloseTo(30, 9);
    expect(middle.y / 17).toBeCloseTo(-40, 9);
  });
  test('seen at a slant lies on an ellipse', () => {
    const places = pixelPlaces(ring({ count: 31, flattening: 0.2 }));
    for (const { x, y } of places) expect((x / 100) ** 2 + (y / 20) ** 2).toBeCloseTo(1, 9);
    // The slant moves nothing sideways.
    expect(places.map(({ x }) => x)).toEqual(pixelPlaces(ring({ count: 31 })).map(({ x }) => x));
  });
  test('of one pixel', () => {
    expectPlaces(ring({ count: 1 }), [[0, 100]]);
  });
});

describe('arc', () => {
  test('has a pixel on both ends', () => {
    const half = 100 * Math.SQRT1_2;
    expectPlaces(arc(), [
      [-100, 0],
      [-half, half],
      [0, 100],
      [half, half],
      [100, 0],
    ]);
  });
  test('runs clockwise where the last angle is smaller, counter-clockwise where it is larger', () => {
    expectPlaces(arc({ count: 3, firstDegrees: 0, lastDegrees: -90 }), [
      [100, 0],
      [100 * Math.SQRT1_2, -100 * Math.SQRT1_2],
      [0, -100],
    ]);
    expectPlaces(arc({ count: 2, firstDegrees: 0, lastDegrees: 90 }), [
      [100, 0],
      [0, 100],
    ]);
  });
  test('may wind more than once', () => {
    expectPlaces(arc({ count: 3, firstDegrees: 0, lastDegrees: 720 }), [
      [100, 0],
      [100, 0],
      [100, 0],
    ]);
  });
  test('of one pixel stands at its first angle', () => {
    expectPlaces(arc({ count: 1 }), [[-100, 0]]);
  });
  test('every chord is 2 r sin(half the step)', () => {
    for (const length of steps(pixelPlaces(arc({ count: 9, firstDegrees: 10, lastDegrees: 90 })))) {
      expect(length).toBeCloseTo(200 * Math.sin((5 * Math.PI) / 180), 9);
    }
  });
});

describe('grid', () => {
  test('row by row, downwards like lines of text', () => {
    expectPlaces(grid(), [
      [0, 0],
      [10, 0],
      [20, 0],
      [0, -10],
      [10, -10],
      [20, -10],
    ]);
  });
  test('alternating: the second row comes back', () => {
    expectPlaces(grid({ order: 'alternating' }), [
      [0, 0],
      [10, 0],
      [20, 0],
      [20, -10],
      [10, -10],
      [0, -10],
    ]);
  });
  test('with a row pitch of its own', () => {
    expectPlaces(grid({ columns: 1, rowPitchMillimetres: 4 }), [
      [0, 0],
      [0, -4],
    ]);
  });
  test('turned upwards, rows follow to the right', () => {
    expectPlaces(grid({ columns: 2, directionDegrees: 90 }), [
      [0, 0],
      [0, 10],
      [10, 0],
      [10, 10],
    ]);
  });
  test('alternating never jumps: every step is one pitch (seed 31)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: -360, max: 360 }),
        (columns, rows, directionDegrees) => {
          const places = pixelPlaces(grid({ columns, rows, directionDegrees, order: 'alternating' }));
          for (const length of steps(places)) expect(length).toBeCloseTo(10, 6);
        },
      ),
      { seed: 31, numRuns: 200 },
    );
  });
  test('both orders fill the same places (seed 32)', () => {
    const spots = (shape: Shape) =>
      pixelPlaces(shape)
        .map(({ x, y }) => `${x.toFixed(6)} ${y.toFixed(6)}`)
        .sort();
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), (columns, rows) => {
        const rowByRow = spots(grid({ columns, rows, directionDegrees: 20 }));
        expect(new Set(rowByRow).size).toBe(columns * rows);
        expect(spots(grid({ columns, rows, directionDegrees: 20, order: 'alternating' }))).toEqual(rowByRow);
      }),
      { seed: 32, numRuns: 100 },
    );
  });
});

test('points stand where they are put', () => {
  expectPlaces(
    {
      kind: 'points',
      points: [
        [1, 2],
        [-3, 4.5],
      ],
    },
    [
      [1, 2],
      [-3, 4.5],
    ],
  );
});

test('the count is known without placing anything', () => {
  const shapes: readonly Shape[] = [
    straight(),
    ring(),
    arc(),
    grid(),
    grid({ columns: 5, rows: 7 }),
    {
      kind: 'points',
      points: [
        [1, 2],
        [-3, 4.5],
      ],
    },
  ];
  for (const shape of shapes) expect(pixelCount(shape)).toBe(pixelPlaces(shape).length);
});
