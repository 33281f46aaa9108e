import type { Shape } from '../../piece/schema.ts';
import { withEachPoint } from './path.ts';
import { movePoint, type Position } from './plane.ts';
import { type ByShape, byShape } from './shape-of.ts';

/** The shape at another place, `by` millimetres to the right and up. */
export function moveShape(shape: Shape, by: Readonly<Position>): Shape {
  return byShape(movers, shape, by);
}

const movers: ByShape<[by: Readonly<Position>]> = {
  straight: (shape, by) => ({ ...shape, start: movePoint(shape.start, by) }),
  ring: (shape, by) => ({ ...shape, centre: movePoint(shape.centre, by) }),
  arc: (shape, by) => ({ ...shape, centre: movePoint(shape.centre, by) }),
  grid: (shape, by) => ({ ...shape, start: movePoint(shape.start, by) }),
  path: (shape, by) => withEachPoint(shape, (point) => movePoint(point, by)),
  points: (shape, by) => ({ ...shape, points: shape.points.map((point) => movePoint(point, by)) }),
};
