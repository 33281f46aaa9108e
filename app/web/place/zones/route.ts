/** The way light runs through a zone: from index to index, as lines between the places of pixels. */

import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Layout, Point, Zone } from '../../../../engine/layout/layout.ts';

export interface Route {
  /** Pixels of the first index, and of the last. */
  readonly first: readonly Point[];
  readonly last: readonly Point[];
  readonly steps: readonly Step[];
}

export interface Step {
  readonly from: Point;
  readonly to: Point;
  /** Farther than neighbours are: the light jumps. */
  readonly jumps: boolean;
}

/** So many usual steps are still a step. */
const jump = 2.5;

/** Twins run side by side, each from its own nearest pixel of the index before. */
export function routeOf(zone: Zone, { pixels }: Layout, side: Side): Route {
  const rows: Point[][] = Array.from({ length: zone.count }, () => []);
  for (const { index, pixel } of zone.entries) rows[index]!.push(pixels[pixel]![side]);
  const pairs = rows.flatMap((row, i) => (i === 0 ? [] : pairUp(rows[i - 1]!, row)));
  const lengths = pairs.map(([from, to]) => gap(from, to)).sort((a, b) => a - b);
  const usual = lengths[Math.floor(lengths.length / 2)] ?? 0;
  return {
    first: rows[0] ?? [],
    last: rows.at(-1) ?? [],
    steps: pairs.map(([from, to]) => ({ from, to, jumps: gap(from, to) > jump * usual })),
  };
}

/** Each place with the one before it; of several the nearest that is still free, where all are taken any. */
function pairUp(before: readonly Point[], after: readonly Point[]): [Point, Point][] {
  const free = [...before];
  return after.map((to) => {
    const choice = free.length > 0 ? free : before;
    const from = choice.reduce((best, next) => (gap(next, to) < gap(best, to) ? next : best));
    if (free.length > 0) free.splice(free.indexOf(from), 1);
    return [from, to];
  });
}

function gap(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
