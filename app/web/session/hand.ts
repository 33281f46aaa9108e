/** How what a hand does becomes steps of the history. */
import type { Checked } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { mark, record, settle, type Work } from '../../../engine/edit/history.ts';
import { titleOf } from '../../../engine/edit/titles.ts';

/** A step by itself; or one moment of a drag, which goes on until the hand rests or turns to something else. */
export type Manner = 'step' | 'drag';

/** The work after an edit, or why it was refused. Moments of one drag are one step, named after the first. */
export function editWork(work: Work, edit: Edit, manner: Manner): Checked<Work> {
  if (manner === 'step') return record(settle(work), edit);
  const name = titleOf(edit, work.piece);
  return record(work.history.drag?.name === name ? work : mark(work, name), edit);
}
