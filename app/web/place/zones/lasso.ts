/** What lies inside a line that a hand has drawn. */
import type { Point } from '../../../../engine/layout/layout.ts';

/**
 * Whether the closed line winds around the point (nonzero rule): a lasso that crosses itself holds what it
 * goes around twice as well as what it goes around once.
 */
export function goesAround(line: readonly Point[], { x, y }: Point): boolean {
  let turns = 0;
  for (const [i, a] of line.entries()) {
    const b = line[(i + 1) % line.length]!;
    const upwards = a.y <= y;
    if (upwards === b.y <= y) continue;
    const isLeft = (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y);
    if (upwards && isLeft > 0) turns += 1;
    if (!upwards && isLeft < 0) turns -= 1;
  }
  return turns !== 0;
}

/** Indices of the places that a lasso holds; a line of fewer than three points holds nothing. */
export function caughtBy(line: readonly Point[], places: readonly Point[]): number[] {
  if (line.length < 3) return [];
  return places.flatMap((place, index) => (goesAround(line, place) ? [index] : []));
}

/** The drawn line without points that lie nearer to the one before than a step. */
export function thinned(line: readonly Point[], step: number): Point[] {
  const kept: Point[] = [];
  for (const point of line) {
    const last = kept.at(-1);
    if (last === undefined || Math.hypot(point.x - last.x, point.y - last.y) >= step) kept.push(point);
  }
  return kept;
}
