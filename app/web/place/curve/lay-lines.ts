/** Lines laid on the table as runs of strip. */
import { applyEdit } from '../../../../engine/edit/apply.ts';
import { type Edit, together } from '../../../../engine/edit/edit.ts';
import { newRun } from '../../../../engine/edit/offers/add-run.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { takeRuns } from '../in-hand.ts';
import { pitchOnHand } from '../lay/add.ts';
import type { Line } from './nodes.ts';
import { stripAlong } from './path-shape.ts';

/**
 * Adds a run along each line, in one step, and takes them in hand; a single one with its nodes.
 * @param pitch millimetres; that of the strip at hand where it is left out
 * @returns whether they could be laid; what is wrong stands in the bench's faults
 */
export function layLines(
  session: Session,
  hand: Hand,
  lines: readonly Line[],
  wanted: string,
  pitch?: number,
): boolean {
  const open = session.bench.get().open;
  if (open === null) return false;
  let piece = open.piece;
  const names: string[] = [];
  const edits: Edit[] = [];
  for (const line of lines) {
    const edit = newRun(piece, stripAlong(line, pitch ?? pitchOnHand(open.piece)), wanted);
    edits.push(edit);
    names.push(edit.run.name);
    // The next name counts on from this one.
    piece = applyEdit(piece, edit).value?.piece ?? piece;
  }
  session.edit(together(`Lay ${names.length === 1 ? names[0] : `${names.length} curves`}`, edits));
  if (session.bench.get().editFaults.length > 0) return false;
  session.desk.side.set('flat');
  takeRuns(session, names);
  if (names.length === 1) hand.take({ kind: 'bend', run: names[0]!, node: null });
  else hand.putAway();
  return true;
}
