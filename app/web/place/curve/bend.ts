/** What it comes to when the course of a run is drawn otherwise. */
import type { Checked } from '../../../../engine/diagnostic.ts';
import { type Edit, together } from '../../../../engine/edit/edit.ts';
import { lengthOfPath, type PathShape } from '../../../../engine/edit/geometry/path.ts';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import { changeCount } from '../../../../engine/edit/offers/count.ts';
import { found, given } from '../../../../engine/edit/outcome.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { shapeOn } from '../surface/places.ts';
import { isClosed } from './nodes.ts';
import { refitted } from './path-shape.ts';

export function bendName(run: string): string {
  return `Bend run ${run}`;
}

/** The path that a run has on a side; undefined for every other shape. */
export function pathOn(run: Run, side: Side): PathShape | undefined {
  const shape = shapeOn(run, side);
  return shape.kind === 'path' ? shape : undefined;
}

/**
 * Gives a run another course. On the bench it is cut from strip: one that was filled with pixels stays
 * filled, any other keeps its number. On the body the pixels are given, and spread along the course.
 */
export function bendRun(piece: Piece, run: Run, side: Side, course: PathShape): Checked<Edit> {
  if (side === 'worn') {
    return found({ kind: 'set-run', run: run.name, set: { worn: spreadOut(course) } });
  }
  const before = run.flat;
  const wasFilled = before.kind === 'path' && refitted(before).count === before.count;
  return wasFilled ? fillRun(piece, run, course) : layAlong(run.name, course);
}

/** A course with as many pixels as fit on it, and all that follows for zones and single pixels. */
export function fillRun(piece: Piece, run: Run, course: PathShape): Checked<Edit> {
  const flat = refitted(course);
  return given(changeCount(piece, run.name, flat.count, 'pitch'), (counted) =>
    found(together(bendName(run.name), [counted, { kind: 'set-run', run: run.name, set: { flat } }])),
  );
}

function layAlong(run: string, flat: PathShape): Checked<Edit> {
  return found({ kind: 'set-run', run, set: { flat } });
}

/** What a file takes as a pitch, in millimetres. */
const leastPitch = 0.01;
const mostPitch = 1000;

/** The same pixels from one end of the course to the other. */
function spreadOut(course: PathShape): PathShape {
  const steps = Math.max(1, isClosed(course) ? course.count : course.count - 1);
  // A hair less, so that rounding does not put the last pixel behind the end.
  const pitch = (lengthOfPath(course) / steps) * (1 - 1e-9);
  return { ...course, pitchMillimetres: Math.min(mostPitch, Math.max(leastPitch, pitch)) };
}
