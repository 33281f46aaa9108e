/** Upright boxes of the plane, in millimetres, y up. */
import type { Point } from '../../../../engine/layout/layout.ts';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** The smallest box around all of the points; undefined where there are none. */
export function boxAround(points: Iterable<Point>): Box | undefined {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return left <= right ? { left, right, bottom, top } : undefined;
}

/** The box with room on every side. */
export function widened({ left, right, bottom, top }: Box, by: number): Box {
  return { left: left - by, right: right + by, bottom: bottom - by, top: top + by };
}

export function middleOf({ left, right, bottom, top }: Box): Point {
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
}

export function holds({ left, right, bottom, top }: Box, { x, y }: Point): boolean {
  return left <= x && x <= right && bottom <= y && y <= top;
}

/** Corners in any order. */
export function boxBetween(a: Point, b: Point): Box {
  return boxAround([a, b])!;
}
