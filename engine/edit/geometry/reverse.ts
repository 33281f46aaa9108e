import { cubicsUnderPixels } from '../../layout/path.ts';
import { pixelPlaces } from '../../layout/shapes.ts';
import { limits } from '../../piece/limits.ts';
import type { Shape } from '../../piece/schema.ts';
import { type Position, tidyDegrees } from './plane.ts';
import { asPoints, type ByShape, byShape, type ShapeOf } from './shape-of.ts';

/**
 * The same pixels at the same places, wired from the other end. A grid of an even number of alternating
 * rows becomes loose points: its last row ends where its rows begin, and no grid begins there upwards. So
 * does a path of very many curves whose pixels go on beyond them.
 */
export function reverseShape(shape: Shape): Shape {
  return byShape(reversers, shape);
}

const reversers: ByShape<[]> = {
  straight: (shape) => ({
    ...shape,
    start: lastOf(shape),
    directionDegrees: opposite(shape.directionDegrees),
  }),

  ring(shape) {
    const step = 360 / shape.count;
    const lastDegrees = shape.firstDegrees + (shape.clockwise ? step : -step);
    return { ...shape, firstDegrees: tidyDegrees(lastDegrees), clockwise: !shape.clockwise };
  },

  arc: (shape) =>
    shape.count === 1
      ? shape
      : { ...shape, firstDegrees: shape.lastDegrees, lastDegrees: shape.firstDegrees },

  grid(shape) {
    const { columns, rows, order, directionDegrees } = shape;
    if (order === 'alternating' && rows % 2 === 0 && columns > 1) return reversePoints(asPoints(shape));
    return { ...shape, start: lastOf(shape), directionDegrees: opposite(directionDegrees) };
  },

  path(shape) {
    const back = cubicsUnderPixels(shape).reverse();
    if (shape.count === 1) return shape;
    if (back.length > limits.curvesPerPath) return reversePoints(asPoints(shape));
    const curves = back.map(({ start, firstControl, secondControl }) => ({
      firstControl: [...secondControl] as Position,
      secondControl: [...firstControl] as Position,
      end: [...start] as Position,
    }));
    return { ...shape, start: [...back[0]!.end], curves };
  },

  points: reversePoints,
};

function reversePoints(shape: ShapeOf<'points'>): ShapeOf<'points'> {
  return { ...shape, points: [...shape.points].reverse() };
}

function lastOf(shape: Shape): [number, number] {
  const { x, y } = pixelPlaces(shape).at(-1)!;
  return [x, y];
}

function opposite(degrees: number): number {
  return tidyDegrees(degrees + 180);
}
