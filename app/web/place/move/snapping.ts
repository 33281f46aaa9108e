/** Where a steady hand would lay runs down: in line with ends and middles of others, an axis, or the grid. */

import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import { snapPoint } from '../../../../engine/edit/snap/snap-plane.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { boxAround, middleOf } from '../surface/box.ts';
import { placesOf, shapeOn } from '../surface/places.ts';

/** A line that something came to rest on: upright at an x, or level at a y. */
export interface Guide {
  readonly axis: 'x' | 'y';
  readonly at: number;
  /** What it lines up with; undefined for an axis or the grid. */
  readonly with?: Point;
  readonly kind: 'run' | 'axis' | 'grid';
}

export interface Guides {
  readonly side: Side;
  readonly lines: readonly Guide[];
}

export interface Snapped {
  readonly by: Point;
  readonly guides: readonly Guide[];
}

/** Ends and middle of a run: what the eye lines up. */
export function anchorsOf(run: Run, side: Side): Point[] {
  const shape = shapeOn(run, side);
  const places = placesOf(shape);
  const middle = middleOf(boxAround(places)!);
  // The ends of a ring are no ends to the eye.
  return shape.kind === 'ring' ? [middle] : [places[0]!, places.at(-1)!, middle];
}

/**
 * A move as the hand meant it. Across and along are decided one by one: first whatever of others is nearest
 * within reach, else an axis through the origin, else the grid.
 * @param anchors of what is moved, as they were before the move
 * @param targets of what lies still
 * @param gridStep in millimetres; 0 for none
 */
export function snapMove(
  by: Point,
  anchors: readonly Point[],
  targets: readonly Point[],
  reach: number,
  gridStep: number,
): Snapped {
  const x = snapOne('x', by, anchors, targets, reach, gridStep);
  const y = snapOne('y', by, anchors, targets, reach, gridStep);
  return {
    by: { x: by.x + x.shift, y: by.y + y.shift },
    guides: [x.guide, y.guide].filter((guide) => guide !== undefined),
  };
}

interface Shift {
  readonly shift: number;
  readonly guide?: Guide;
}

function snapOne(
  axis: 'x' | 'y',
  by: Point,
  anchors: readonly Point[],
  targets: readonly Point[],
  reach: number,
  gridStep: number,
): Shift {
  let best: Shift | undefined;
  const offer = (shift: number, guide: Guide) => {
    if (Math.abs(shift) > reach) return;
    if (best === undefined || Math.abs(shift) < Math.abs(best.shift)) best = { shift, guide };
  };
  for (const anchor of anchors) {
    const stands = anchor[axis] + by[axis];
    for (const target of targets) {
      offer(target[axis] - stands, { axis, at: target[axis], with: target, kind: 'run' });
    }
  }
  for (const anchor of best === undefined ? anchors : []) {
    offer(-(anchor[axis] + by[axis]), { axis, at: 0, kind: 'axis' });
  }
  const first = anchors[0];
  if (best !== undefined || first === undefined) return best ?? { shift: 0 };
  const stands = first[axis] + by[axis];
  const [grid] = snapPoint([stands, 0], gridStep);
  offer(grid - stands, { axis, at: grid, kind: 'grid' });
  return best ?? { shift: 0 };
}
