/** How many pixels a shape has. */
import type { Shape } from '../../piece/schema.ts';
import { pitchOf, sweepOf } from './pitch.ts';
import type { Position } from './plane.ts';
import { lengthOf, respaced } from './polyline.ts';
import { type ByShape, byShape, type ShapeOf } from './shape-of.ts';

/** What stays when pixels come or go: the strip's own pitch, or the room that the shape takes up. */
export type Keeping = 'pitch' | 'size';

/** The shape with so many pixels, 1 or more; undefined for a grid that these do not fill row by row. */
export function withCount(shape: Shape, count: number, keeping: Keeping): Shape | undefined {
  return byShape(withCounts, shape, count, keeping);
}

/** By what the steps get larger so that fewer of them go as far; a single pixel goes nowhere. */
function stretch(before: number, count: number): number {
  return before > 1 && count > 1 ? (before - 1) / (count - 1) : 1;
}

const withCounts: ByShape<[count: number, keeping: Keeping], Shape | undefined> = {
  straight: withCountAlong,

  ring(shape, count, keeping) {
    if (keeping === 'size') return { ...shape, count };
    return { ...shape, count, diameterMillimetres: (shape.diameterMillimetres * count) / shape.count };
  },

  arc(shape, count, keeping) {
    if (keeping === 'size') return { ...shape, count };
    return {
      ...shape,
      count,
      lastDegrees: shape.firstDegrees + sweepOf(shape) / stretch(shape.count, count),
    };
  },

  grid(shape, count, keeping) {
    const rows = count / shape.columns;
    if (!Number.isInteger(rows)) return undefined;
    const { pitchMillimetres, rowPitchMillimetres = pitchMillimetres } = shape;
    if (keeping === 'pitch') return { ...shape, rows };
    return { ...shape, rows, rowPitchMillimetres: rowPitchMillimetres * stretch(shape.rows, rows) };
  },

  path: withCountAlong,

  points(shape, count, keeping) {
    const { points } = shape;
    if (keeping === 'size')
      return { ...shape, points: respaced(points, lengthOf(points) / (count - 1 || 1), count) };
    return { ...shape, points: count <= points.length ? points.slice(0, count) : prolonged(shape, count) };
  },
};

function withCountAlong(
  shape: ShapeOf<'straight'> | ShapeOf<'path'>,
  count: number,
  keeping: Keeping,
): Shape {
  if (keeping === 'pitch') return { ...shape, count };
  return { ...shape, count, pitchMillimetres: shape.pitchMillimetres * stretch(shape.count, count) };
}

/** What comes for a first pixel that stands alone: the pitch of strips with 60 pixels a metre. */
const usualPitch = 1000 / 60;

/** More points at the end, straight on, as far apart as the ones before are on average. */
function prolonged(shape: ShapeOf<'points'>, count: number): Position[] {
  const { points } = shape;
  const last = points.at(-1)!;
  const beforeLast = points.at(-2) ?? last;
  const ahead: Position = [2 * last[0] - beforeLast[0], 2 * last[1] - beforeLast[1]];
  const step = pitchOf(shape) ?? usualPitch;
  return [...points, ...respaced([last, ahead], step, count - points.length + 1).slice(1)];
}
