/** Places and angles as a steady hand would choose them. */
import type { Position } from '../geometry/plane.ts';

/** The nearest point of a square grid through the origin; a step of 0 leaves the point where it is. */
export function snapPoint([x, y]: Readonly<Position>, stepMillimetres: number): Position {
  if (stepMillimetres <= 0) return [x, y];
  return [nearest(x, stepMillimetres), nearest(y, stepMillimetres)];
}

export function snapDegrees(degrees: number, step: number): number {
  return step <= 0 ? degrees : nearest(degrees, step);
}

/** Adding 0 turns -0 into 0. */
function nearest(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}
