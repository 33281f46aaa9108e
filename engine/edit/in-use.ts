/** What is still referred to is not taken away by itself. */
import type { Piece } from '../piece/schema.ts';
import { clipped } from '../piece/wording.ts';
import type { Edit } from './edit.ts';
import { type Refusal, refused } from './outcome.ts';
import { holdersInWords, holdersOf, type Pool } from './references.ts';

interface Removal {
  readonly pool: Pool;
  readonly what: string;
  readonly name: string;
}

function removalOf(edit: Edit): Removal | undefined {
  switch (edit.kind) {
    case 'remove-run':
      return { pool: 'zone', what: 'run', name: edit.run };
    case 'remove-zone':
      return { pool: 'zone', what: 'zone', name: edit.zone };
    case 'remove-pattern':
      return { pool: 'pattern', what: 'pattern', name: edit.pattern };
    case 'remove-look':
      return { pool: 'look', what: 'look', name: edit.look };
    default:
      return undefined;
  }
}

/**
 * Why a removal cannot be done, naming what is in its way. Only for an edit that stands alone: among edits
 * done together, others may take the uses away as well (`offers/` makes such).
 */
export function refusalOfRemoval(piece: Piece, edit: Edit): Refusal | undefined {
  const removal = removalOf(edit);
  if (removal === undefined) return undefined;
  const { pool, what, name } = removal;
  const holders = holdersOf(piece, pool, name).filter(
    (holder) => holder.what !== what || holder.name !== name,
  );
  if (holders.length === 0) return undefined;
  return refused(
    `${what}-in-use`,
    `The ${what} "${clipped(name)}" is in use by ${holdersInWords(holders)}.`,
    'Take it out there first, or remove both together.',
  );
}
