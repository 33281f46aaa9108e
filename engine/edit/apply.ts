/** The one door into a piece. */
import type { Piece } from '../piece/schema.ts';
import { faultsOfChange } from './check/change.ts';
import type { Edit } from './edit.ts';
import { refusalOfRemoval } from './in-use.ts';
import { found, given, type Outcome } from './outcome.ts';
import { parseEdit } from './parse.ts';
import { perform } from './perform.ts';
import { same } from './same.ts';

/**
 * The piece after an edit, and the edit that takes it back; or, with errors, nothing but the reasons.
 * The new piece is sound if the old one is (`checkPiece`), and shares with it all that has not changed; an
 * edit that changes nothing gives the very same piece. Warnings are for `checkPiece` to tell.
 *
 * Diagnostics have paths into the piece as it would have become, or, where the edit itself is at fault,
 * paths that begin with `edit`.
 */
export function applyEdit(piece: Piece, edit: Edit): Outcome {
  return given(parseEdit(edit), (parsed) => {
    const refusal = refusalOfRemoval(piece, parsed);
    if (refusal !== undefined) return refusal;
    return given(perform(piece, parsed), ({ piece: after, inverse }) => {
      if (same(piece, after)) return found({ piece, inverse });
      const faults = faultsOfChange(piece, after);
      return faults.length > 0 ? { diagnostics: faults } : found({ piece: after, inverse });
    });
  });
}
