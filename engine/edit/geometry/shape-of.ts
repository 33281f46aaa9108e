import { pixelPlaces } from '../../layout/shapes.ts';
import type { Shape } from '../../piece/schema.ts';

export type ShapeKind = Shape['kind'];
export type ShapeOf<Kind extends ShapeKind> = Extract<Shape, { readonly kind: Kind }>;

/** One way to change a shape, for every kind: a new kind does not compile before it has one. */
export type ByShape<Rest extends readonly unknown[], Result = Shape> = {
  readonly [Kind in ShapeKind]: (shape: ShapeOf<Kind>, ...rest: Rest) => Result;
};

/** Calls the entry for the kind of this shape. */
export function byShape<Rest extends readonly unknown[], Result>(
  table: ByShape<Rest, Result>,
  shape: Shape,
  ...rest: Rest
): Result {
  return (table[shape.kind] as (shape: Shape, ...rest: Rest) => Result)(shape, ...rest);
}

/** The same pixels as loose points, for what the kind of a shape cannot say. */
export function asPoints(shape: Shape): ShapeOf<'points'> {
  return { kind: 'points', points: pixelPlaces(shape).map(({ x, y }) => [x, y]) };
}
