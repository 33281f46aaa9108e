/** The data line as it runs: from the board through each run, and by wire from one to the next. */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { placesOf, shapeOn } from './places.ts';

export interface Jump {
  readonly from: Point;
  readonly to: Point;
  readonly millimetres: number;
}

/** Pixels of a run that are there, in the order of the data. */
export function wiredPlaces(run: Run, side: Side): readonly Point[] {
  const places = placesOf(shapeOn(run, side));
  if (run.removed.length === 0) return places;
  const removed = new Set(run.removed);
  return places.filter((_, i) => !removed.has(i));
}

/** Straight from the last pixel of each run to the first of the next. */
export function jumpsBetween(runs: readonly Run[], side: Side): Jump[] {
  const ways = runs.map((run) => wiredPlaces(run, side)).filter((way) => way.length > 0);
  return ways.slice(1).map((way, i) => {
    const from = ways[i]!.at(-1)!;
    const to = way[0]!;
    return { from, to, millimetres: Math.hypot(to.x - from.x, to.y - from.y) };
  });
}

export interface Arrow {
  readonly at: Point;
  /** Clockwise from the right, as the screen turns. */
  readonly degrees: number;
}

/**
 * Arrow heads along a way of the screen: one in the middle of a short one, else about so many pixels apart.
 */
export function arrowsAlong(way: readonly Point[], apart: number): Arrow[] {
  const lengths = way.slice(1).map((point, i) => Math.hypot(point.x - way[i]!.x, point.y - way[i]!.y));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  if (whole < 12) return [];
  const count = Math.max(1, Math.round(whole / apart));
  const arrows: Arrow[] = [];
  let passed = 0;
  for (const [i, length] of lengths.entries()) {
    const [a, b] = [way[i]!, way[i + 1]!];
    for (let wanted = nextStop(); arrows.length < count && wanted < passed + length; wanted = nextStop()) {
      const share = (wanted - passed) / length;
      arrows.push({
        at: { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share },
        degrees: (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI,
      });
    }
    passed += length;
  }
  return arrows;

  function nextStop(): number {
    return ((arrows.length + 0.5) * whole) / count;
  }
}
