import type { Shape } from '../../piece/schema.ts';
import { withEachPoint } from './path.ts';
import { type Axis, mirrorPoint, tidyDegrees } from './plane.ts';
import { asPoints, type ByShape, byShape, type ShapeOf } from './shape-of.ts';

/**
 * The shape as a mirror shows it, wired in the same order. What its kind cannot say becomes loose points:
 * a grid of several rows and columns, as rows lie to the right of its direction, never to the left; and a
 * flattened ring at an axis that is neither level nor upright.
 */
export function mirrorShape(shape: Shape, axis: Axis): Shape {
  return byShape(mirrors, shape, axis);
}

const mirrors: ByShape<[axis: Axis]> = {
  straight: (shape, axis) => ({
    ...shape,
    start: mirrorPoint(shape.start, axis),
    directionDegrees: mirrored(shape.directionDegrees, axis),
  }),

  ring: (shape, axis) =>
    shape.flattening === 1 || axis.degrees % 90 === 0
      ? {
          ...shape,
          centre: mirrorPoint(shape.centre, axis),
          firstDegrees: mirrored(shape.firstDegrees, axis),
          clockwise: !shape.clockwise,
        }
      : mirrorPoints(asPoints(shape), axis),

  arc(shape, axis) {
    const firstDegrees = mirrored(shape.firstDegrees, axis);
    return {
      ...shape,
      centre: mirrorPoint(shape.centre, axis),
      firstDegrees,
      lastDegrees: firstDegrees - (shape.lastDegrees - shape.firstDegrees),
    };
  },

  grid(shape, axis) {
    const { rows, columns, directionDegrees } = shape;
    if (rows > 1 && columns > 1) return mirrorPoints(asPoints(shape), axis);
    // Of a single column only the way to the next row is seen, a quarter turn to the right of the direction.
    const halfTurn = columns === 1 ? 180 : 0;
    return {
      ...shape,
      start: mirrorPoint(shape.start, axis),
      directionDegrees: tidyDegrees(mirrored(directionDegrees, axis) + halfTurn),
    };
  },

  path: (shape, axis) => withEachPoint(shape, (point) => mirrorPoint(point, axis)),

  points: mirrorPoints,
};

/** A direction as the mirror shows it. */
function mirrored(degrees: number, axis: Axis): number {
  return tidyDegrees(2 * axis.degrees - degrees);
}

function mirrorPoints(shape: ShapeOf<'points'>, axis: Axis): ShapeOf<'points'> {
  return { ...shape, points: shape.points.map((point) => mirrorPoint(point, axis)) };
}
