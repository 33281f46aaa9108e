/** How what a hand does becomes steps of the history. */
import type { Checked } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { drag, mark, record, settle, type Work } from '../../../engine/edit/history.ts';
import { titleOf } from '../../../engine/edit/titles.ts';

/**
 * A step by itself; or one moment of a drag, which goes on until the hand rests or turns to something else.
 * A `drag` goes on from its moment before; a `pull` is an edit of the piece as it was when the hand began.
 */
export type Manner = 'step' | 'drag' | 'pull';

/** The work after an edit, or why it was refused. Moments of one drag are one step, named after the first. */
export function editWork(work: Work, edit: Edit, manner: Manner): Checked<Work> {
  if (manner === 'step') return record(settle(work), edit);
  const name = titleOf(edit, work.piece);
  const begun = work.history.drag?.name === name ? work : mark(work, name);
  return manner === 'pull' ? drag(begun, edit) : record(begun, edit);
}
