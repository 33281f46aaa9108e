/** The pixel under a pointer. */
import type { Point } from '../../../../engine/layout/layout.ts';

/** Index of the place nearest to a point, or none within reach. */
export function nearestWithin(places: readonly Point[], at: Point, reach: number): number | undefined {
  let best: number | undefined;
  let least = reach;
  for (const [i, { x, y }] of places.entries()) {
    const far = Math.hypot(x - at.x, y - at.y);
    if (far > least) continue;
    least = far;
    best = i;
  }
  return best;
}
