/** Pixels that are laid one by one, each at its own place. */
import { type Edit, together } from '../../../../engine/edit/edit.ts';
import { newRun } from '../../../../engine/edit/offers/add-run.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { runsOf } from '../surface/places.ts';

interface OneMore {
  /** The run that the pixel is part of. */
  readonly run: string;
  readonly edit: Edit;
}

/**
 * One more pixel at the end of the run in hand, if that consists of single pixels and is worn where it lies;
 * else the first pixel of a new run.
 */
export function onePixelMore(piece: Piece, inHand: readonly string[], at: Point): OneMore {
  const spot: [number, number] = [tidy(at.x), tidy(at.y)];
  const held = inHand.length === 1 ? runsOf(piece).find(({ name }) => name === inHand[0]) : undefined;
  if (held?.flat.kind !== 'points' || held.worn !== undefined) {
    const edit = newRun(piece, { kind: 'points', points: [spot] }, 'pixels');
    return { run: edit.run.name, edit };
  }
  const flat = { ...held.flat, points: [...held.flat.points, spot] };
  const edit: Edit = { kind: 'set-run', run: held.name, set: { flat } };
  return { run: held.name, edit: together(`Add a pixel to run ${held.name}`, [edit]) };
}

function tidy(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
