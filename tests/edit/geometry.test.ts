/** Shapes moved, turned, scaled and mirrored, against the same done to each of their pixels. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withCount } from '../../engine/edit/geometry/count.ts';
import { mirrorShape } from '../../engine/edit/geometry/mirror.ts';
import { moveShape } from '../../engine/edit/geometry/move.ts';
import { pitchOf, withPitch } from '../../engine/edit/geometry/pitch.ts';
import {
  type Axis,
  mirrorPoint,
  movePoint,
  type Position,
  scalePoint,
  turnPoint,
} from '../../engine/edit/geometry/plane.ts';
import { scaleShape } from '../../engine/edit/geometry/scale.ts';
import { turnShape } from '../../engine/edit/geometry/turn.ts';
import { pixelCount, pixelPlaces } from '../../engine/layout/shapes.ts';
import { shape as shapeSchema } from '../../engine/piece/schema/shape.ts';
import type { Shape } from '../../engine/piece/schema.ts';

const seed = 20260622;
const runs = { seed, numRuns: 400 };

const millimetres = fc.integer({ min: -4000, max: 4000 }).map((tenths) => tenths / 10);
const point = fc.tuple(millimetres, millimetres);
const degrees = fc.oneof(
  fc.constantFrom(0, 30, 45, 90, 180, 270, 360, -90),
  fc.integer({ min: -7200, max: 7200 }).map((tenths) => tenths / 10),
);
const size = fc.integer({ min: 10, max: 6000 }).map((tenths) => tenths / 10);
const count = fc.integer({ min: 1, max: 40 });
const axis: fc.Arbitrary<Axis> = fc.record({ through: point, degrees });

/** Also with control points drawn in to the end, where the curve stands still for a moment. */
const curve = fc
  .tuple(point, point, point, fc.constantFrom('none', 'none', 'second', 'both'))
  .map(([firstControl, secondControl, end, drawnIn]) => ({
    firstControl: drawnIn === 'both' ? end : firstControl,
    secondControl: drawnIn === 'none' ? secondControl : end,
    end,
  }));

const shapes: { readonly [Kind in Shape['kind']]: fc.Arbitrary<Extract<Shape, { kind: Kind }>> } = {
  straight: fc.record({
    kind: fc.constant('straight'),
    count,
    start: point,
    pitchMillimetres: size,
    directionDegrees: degrees,
  }),
  ring: fc.record({
    kind: fc.constant('ring'),
    count,
    centre: point,
    diameterMillimetres: size,
    firstDegrees: degrees,
    clockwise: fc.boolean(),
    flattening: fc.constantFrom(1, 1, 0.5, 0),
  }),
  arc: fc.record({
    kind: fc.constant('arc'),
    count,
    centre: point,
    radiusMillimetres: size,
    firstDegrees: degrees,
    lastDegrees: degrees,
  }),
  grid: fc.record(
    {
      kind: fc.constant('grid'),
      columns: fc.integer({ min: 1, max: 6 }),
      rows: fc.integer({ min: 1, max: 6 }),
      start: point,
      pitchMillimetres: size,
      rowPitchMillimetres: size,
      directionDegrees: degrees,
      order: fc.constantFrom('rows', 'alternating'),
    },
    {
      requiredKeys: ['kind', 'columns', 'rows', 'start', 'pitchMillimetres', 'directionDegrees', 'order'],
    },
  ),
  path: fc.record({
    kind: fc.constant('path'),
    count,
    start: point,
    curves: fc.array(curve, { minLength: 1, maxLength: 4 }),
    pitchMillimetres: fc.integer({ min: 10, max: 400 }).map((tenths) => tenths / 10),
  }),
  points: fc.record({
    kind: fc.constant('points'),
    points: fc.array(point, { minLength: 1, maxLength: 30 }),
  }),
};
const shape: fc.Arbitrary<Shape> = fc.oneof(...Object.values(shapes));

const positions = (of: Shape): Position[] => pixelPlaces(of).map(({ x, y }) => [x, y]);

/** The farthest that any pixel is from where it should be. */
function error(of: Shape, wanted: readonly Position[]): number {
  const places = positions(of);
  if (places.length !== wanted.length) return Number.POSITIVE_INFINITY;
  return Math.max(...places.map(([x, y], i) => Math.hypot(x - wanted[i]![0], y - wanted[i]![1])));
}

describe('G1 a changed shape', () => {
  it('has each pixel where moving, turning, scaling or mirroring that pixel puts it', () => {
    fc.assert(
      fc.property(shape, point, degrees, axis, (before, by, turn, at) => {
        const places = positions(before);
        const moved = places.map((place) => movePoint(place, by));
        const turned = places.map((place) => turnPoint(place, by, turn));
        const scaled = places.map((place) => scalePoint(place, by, 1.5));
        const mirrored = places.map((place) => mirrorPoint(place, at));
        expect(error(moveShape(before, by), moved)).toBeLessThan(1e-9);
        expect(error(turnShape(before, by, turn), turned)).toBeLessThan(1e-9);
        expect(error(scaleShape(before, by, 1.5), scaled)).toBeLessThan(1e-9);
        expect(error(mirrorShape(before, at), mirrored)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  it('stays of its kind but where that cannot say it, and is a shape that the schema takes', () => {
    fc.assert(
      fc.property(shape, point, degrees, axis, (before, by, turn, at) => {
        const changed = [
          moveShape(before, by),
          turnShape(before, by, turn),
          scaleShape(before, by, 0.5),
          mirrorShape(before, at),
        ];
        for (const after of changed) expect(shapeSchema.parse(after)).toEqual(after);
        const isFlat = before.kind === 'ring' && before.flattening < 1;
        const isGrid = before.kind === 'grid' && before.rows > 1 && before.columns > 1;
        const kinds = [
          before.kind,
          isFlat && turn % 180 !== 0 ? 'points' : before.kind,
          before.kind,
          isGrid || (isFlat && at.degrees % 90 !== 0) ? 'points' : before.kind,
        ];
        expect(changed.map(({ kind }) => kind)).toEqual(kinds);
      }),
      runs,
    );
  });
});

describe('G2 there and back', () => {
  it('is where it was: a full turn at once exactly, all others within a millionth of a micrometre', () => {
    fc.assert(
      fc.property(shape, point, degrees, axis, (before, by, turn, at) => {
        const places = positions(before);
        expect(turnShape(before, by, 360)).toBe(before);
        expect(turnShape(before, by, -720)).toBe(before);
        const there = moveShape(before, by);
        expect(error(moveShape(there, [-by[0], -by[1]]), places)).toBeLessThan(1e-9);
        expect(error(turnShape(turnShape(before, by, turn), by, -turn), places)).toBeLessThan(1e-9);
        expect(error(turnShape(turnShape(before, by, 123), by, 237), places)).toBeLessThan(1e-9);
        expect(error(mirrorShape(mirrorShape(before, at), at), places)).toBeLessThan(1e-9);
        expect(error(scaleShape(scaleShape(before, by, 4), by, 0.25), places)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  it('four quarter turns about whole millimetres, and two mirrorings, give the very same numbers', () => {
    const straight: Shape = {
      kind: 'straight',
      count: 12,
      start: [30, -40],
      pitchMillimetres: 16.7,
      directionDegrees: -90,
    };
    let turned: Shape = straight;
    for (let quarter = 0; quarter < 4; quarter++) turned = turnShape(turned, [7, 9], 90);
    expect(turned).toEqual(straight);
    const upright: Axis = { through: [5, 0], degrees: 90 };
    expect(mirrorShape(mirrorShape(straight, upright), upright)).toEqual(straight);
  });
});

describe('G3 handedness', () => {
  it('a mirrored ring runs the other way round', () => {
    const ring: Shape = {
      kind: 'ring',
      count: 4,
      centre: [100, 0],
      diameterMillimetres: 20,
      firstDegrees: 90,
      clockwise: true,
      flattening: 1,
    };
    const mirrored = mirrorShape(ring, { through: [0, 0], degrees: 90 });
    expect(mirrored).toEqual({ ...ring, centre: [-100, 0], clockwise: false });
  });

  it('turning counts counter-clockwise, with y up', () => {
    expect(turnPoint([1, 0], [0, 0], 90)).toEqual([0, 1]);
    expect(turnPoint([3, 2], [2, 2], 90)).toEqual([2, 3]);
  });
});

describe('G4 pitch and count', () => {
  it('a ring of 60 pixels from a strip of 30 a metre is two metres round', () => {
    const ring = sampleOf('ring', 60);
    const bent = withPitch(ring, 1000 / 30) as Extract<Shape, { kind: 'ring' }>;
    // Circumference over pi: 2000 / 3.14159... = 636.62 mm.
    expect(bent.diameterMillimetres).toBeCloseTo(636.62, 2);
  });

  it('the pitch that was set is the pitch that there is, also along bent ways', () => {
    fc.assert(
      fc.property(shape, size, (before, pitch) => {
        const after = withPitch(before, pitch);
        expect(pixelCount(after)).toBe(pixelCount(before));
        const isBent = after.kind === 'points' && new Set(after.points.map(String)).size > 2;
        // Between loose points the strip is bent, so that the straight way from pixel to pixel is shorter.
        if (!isBent && pitchOf(after) !== undefined) expect(pitchOf(after)).toBeCloseTo(pitch, 9);
      }),
      runs,
    );
  });

  it('loose points slide along their way: measured along it they are a pitch apart', () => {
    const corner: Shape = {
      kind: 'points',
      points: [
        [0, 0],
        [10, 0],
        [10, 10],
      ],
    };
    expect(withPitch(corner, 5)).toEqual({
      kind: 'points',
      points: [
        [0, 0],
        [5, 0],
        [10, 0],
      ],
    });
    expect(withCount(corner, 5, 'size')).toEqual({
      kind: 'points',
      points: [
        [0, 0],
        [5, 0],
        [10, 0],
        [10, 5],
        [10, 10],
      ],
    });
    expect(withCount(corner, 5, 'pitch')).toEqual({
      kind: 'points',
      points: [
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 20],
        [10, 30],
      ],
    });
  });

  it('more of the same strip keeps its pitch, as many on the same way keep both ends', () => {
    fc.assert(
      fc.property(shape, fc.integer({ min: 2, max: 60 }), (before, wanted) => {
        const longer = withCount(before, wanted, 'pitch');
        const denser = withCount(before, wanted, 'size');
        if (longer === undefined || denser === undefined) {
          expect(before.kind === 'grid' && wanted % before.columns !== 0).toBe(true);
          return;
        }
        expect([pixelCount(longer), pixelCount(denser)]).toEqual([wanted, wanted]);
        if (before.kind === 'points' || pixelCount(before) === 1) return;
        expect(pitchOf(longer)).toBeCloseTo(pitchOf(before)!, 8);
        if (before.kind === 'ring' || before.kind === 'grid') return;
        const [old, now] = [positions(before), positions(denser)];
        expect(distance(old[0]!, now[0]!)).toBeLessThan(1e-9);
        expect(distance(old.at(-1)!, now.at(-1)!)).toBeLessThan(1e-7);
      }),
      runs,
    );
  });
});

function sampleOf(kind: Shape['kind'], wanted: number): Shape {
  const [one] = fc.sample(shapes[kind] as fc.Arbitrary<Shape>, { seed, numRuns: 1 });
  return withCount(one!, wanted, 'size')!;
}

const distance = (a: Position, b: Position) => Math.hypot(a[0] - b[0], a[1] - b[1]);
