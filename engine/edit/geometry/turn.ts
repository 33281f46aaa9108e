import type { Shape } from '../../piece/schema.ts';
import { withEachPoint } from './path.ts';
import { type Position, tidyDegrees, turnPoint } from './plane.ts';
import { asPoints, type ByShape, byShape, type ShapeOf } from './shape-of.ts';

/**
 * The shape turned counter-clockwise about a point; exact for quarter turns. A flattened ring lies level:
 * turned by anything but a half turn, its pixels become loose points.
 */
export function turnShape(shape: Shape, about: Readonly<Position>, degrees: number): Shape {
  return degrees % 360 === 0 ? shape : byShape(turners, shape, about, degrees);
}

const turners: ByShape<[about: Readonly<Position>, degrees: number]> = {
  straight: (shape, about, degrees) => ({
    ...shape,
    start: turnPoint(shape.start, about, degrees),
    directionDegrees: tidyDegrees(shape.directionDegrees + degrees),
  }),

  ring: (shape, about, degrees) =>
    shape.flattening === 1 || degrees % 180 === 0
      ? {
          ...shape,
          centre: turnPoint(shape.centre, about, degrees),
          firstDegrees: tidyDegrees(shape.firstDegrees + degrees),
        }
      : turnPoints(asPoints(shape), about, degrees),

  arc(shape, about, degrees) {
    const firstDegrees = tidyDegrees(shape.firstDegrees + degrees);
    return {
      ...shape,
      centre: turnPoint(shape.centre, about, degrees),
      firstDegrees,
      lastDegrees: firstDegrees + (shape.lastDegrees - shape.firstDegrees),
    };
  },

  grid: (shape, about, degrees) => ({
    ...shape,
    start: turnPoint(shape.start, about, degrees),
    directionDegrees: tidyDegrees(shape.directionDegrees + degrees),
  }),

  path: (shape, about, degrees) => withEachPoint(shape, (point) => turnPoint(point, about, degrees)),

  points: turnPoints,
};

function turnPoints(shape: ShapeOf<'points'>, about: Readonly<Position>, degrees: number): ShapeOf<'points'> {
  return { ...shape, points: shape.points.map((point) => turnPoint(point, about, degrees)) };
}
