/** How far apart the pixels of a shape are: what the strip on the reel decides. */
import type { Shape } from '../../piece/schema.ts';
import { lengthOf, respaced } from './polyline.ts';
import { type ByShape, byShape, type ShapeOf } from './shape-of.ts';

/** Millimetres from pixel to pixel along the strip, on average; undefined where there is only one pixel. */
export function pitchOf(shape: Shape): number | undefined {
  return byShape(pitches, shape);
}

/**
 * The same number of pixels at another pitch: a straight run gets longer or shorter, a ring larger or
 * smaller, an arc goes further round or less far, a path is followed further or less far, and loose points slide along the way that they mark out.
 */
export function withPitch(shape: Shape, pitchMillimetres: number): Shape {
  return byShape(withPitches, shape, pitchMillimetres);
}

const degreesPerRadian = 180 / Math.PI;

/** How far round an arc goes, in degrees: below 0 clockwise. */
export function sweepOf({ firstDegrees, lastDegrees }: ShapeOf<'arc'>): number {
  return lastDegrees - firstDegrees;
}

const pitches: ByShape<[], number | undefined> = {
  straight: ({ pitchMillimetres }) => pitchMillimetres,
  ring: ({ diameterMillimetres, count }) => (diameterMillimetres * Math.PI) / count,
  arc: (shape) =>
    shape.count === 1
      ? undefined
      : (shape.radiusMillimetres * Math.abs(sweepOf(shape))) / degreesPerRadian / (shape.count - 1),
  grid: ({ pitchMillimetres }) => pitchMillimetres,
  path: ({ pitchMillimetres }) => pitchMillimetres,
  points: ({ points }) => (points.length === 1 ? undefined : lengthOf(points) / (points.length - 1)),
};

const withPitches: ByShape<[pitch: number]> = {
  straight: (shape, pitchMillimetres) => ({ ...shape, pitchMillimetres }),

  ring: (shape, pitch) => ({ ...shape, diameterMillimetres: (pitch * shape.count) / Math.PI }),

  arc(shape, pitch) {
    const sweep = ((pitch * (shape.count - 1)) / shape.radiusMillimetres) * degreesPerRadian;
    return { ...shape, lastDegrees: shape.firstDegrees + (sweepOf(shape) < 0 ? -sweep : sweep) };
  },

  grid: (shape, pitchMillimetres) => ({ ...shape, pitchMillimetres }),

  path: (shape, pitchMillimetres) => ({ ...shape, pitchMillimetres }),

  points: (shape, pitch) => ({ ...shape, points: respaced(shape.points, pitch, shape.points.length) }),
};
