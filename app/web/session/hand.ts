/** How what a hand does becomes steps of the history. */
import type { Checked } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { bail, drag, mark, record, settle, type Work } from '../../../engine/edit/history.ts';
import { found, given } from '../../../engine/edit/outcome.ts';
import { titleOf } from '../../../engine/edit/titles.ts';
import type { Piece } from '../../../engine/piece/schema.ts';

/**
 * A step by itself; or one moment of a drag, which goes on until the hand rests or turns to something else.
 * A `drag` goes on from its moment before; a `pull` is an edit of the piece as it was when the hand began.
 */
export type Manner = 'step' | 'drag' | 'pull';

/** The work after an edit, or why it was refused. Moments of one drag are one step, named after the first. */
export function editWork(work: Work, edit: Edit, manner: Manner): Checked<Work> {
  if (manner === 'step') return record(settle(work), edit);
  const name = titleOf(edit, work.piece);
  if (manner === 'pull') return pullWork(work, name, () => found(edit));
  return record(work.history.drag?.name === name ? work : mark(work, name), edit);
}

/**
 * One moment of a drag that is worked out from the piece as it was when the hand began: a count typed digit
 * by digit takes nothing away that the last digit leaves in place.
 */
export function pullWork(work: Work, name: string, edit: (before: Piece) => Checked<Edit>): Checked<Work> {
  const begun = work.history.drag?.name === name ? work : mark(work, name);
  return given(bail(begun), ({ piece }) => given(edit(piece), (again) => drag(begun, again)));
}
