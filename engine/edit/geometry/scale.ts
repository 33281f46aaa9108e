import type { Shape } from '../../piece/schema.ts';
import { withEachPoint } from './path.ts';
import { type Position, scalePoint } from './plane.ts';
import { type ByShape, byShape } from './shape-of.ts';

/** The shape larger or smaller by a factor above 0, away from a point or towards it: pitches and all. */
export function scaleShape(shape: Shape, about: Readonly<Position>, factor: number): Shape {
  return factor === 1 ? shape : byShape(scalers, shape, about, factor);
}

const scalers: ByShape<[about: Readonly<Position>, factor: number]> = {
  straight: (shape, about, factor) => ({
    ...shape,
    start: scalePoint(shape.start, about, factor),
    pitchMillimetres: shape.pitchMillimetres * factor,
  }),

  ring: (shape, about, factor) => ({
    ...shape,
    centre: scalePoint(shape.centre, about, factor),
    diameterMillimetres: shape.diameterMillimetres * factor,
  }),

  arc: (shape, about, factor) => ({
    ...shape,
    centre: scalePoint(shape.centre, about, factor),
    radiusMillimetres: shape.radiusMillimetres * factor,
  }),

  grid: ({ rowPitchMillimetres, ...shape }, about, factor) => ({
    ...shape,
    start: scalePoint(shape.start, about, factor),
    pitchMillimetres: shape.pitchMillimetres * factor,
    ...(rowPitchMillimetres === undefined ? {} : { rowPitchMillimetres: rowPitchMillimetres * factor }),
  }),

  path: (shape, about, factor) => ({
    ...withEachPoint(shape, (point) => scalePoint(point, about, factor)),
    pitchMillimetres: shape.pitchMillimetres * factor,
  }),

  points: (shape, about, factor) => ({
    ...shape,
    points: shape.points.map((point) => scalePoint(point, about, factor)),
  }),
};
