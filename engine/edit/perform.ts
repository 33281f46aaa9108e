/** What an edit makes of a piece, still unchecked. */
import type { Checked } from '../diagnostic.ts';
import type { Piece } from '../piece/schema.ts';
import type { Edit, EditOf, PlainEdit, PlainKind, Shorthand, ShorthandKind } from './edit.ts';
import { together } from './edit.ts';
import { found, given, type Outcome } from './outcome.ts';
import { parseEdit } from './parse.ts';
import type { Handlers } from './plain/act.ts';
import { buttonHandlers } from './plain/buttons.ts';
import { clipHandlers } from './plain/clips.ts';
import { lookHandlers, trackHandlers } from './plain/looks.ts';
import { patternHandlers } from './plain/patterns.ts';
import { runHandlers } from './plain/runs.ts';
import { wholeHandlers } from './plain/whole.ts';
import { zoneHandlers } from './plain/zones.ts';
import { clipExpansions } from './shorthand/clips.ts';
import type { Expansions } from './shorthand/expansions.ts';
import { keyExpansions } from './shorthand/keys.ts';
import { lookExpansions } from './shorthand/looks.ts';
import { runExpansions } from './shorthand/runs.ts';
import { titleOf } from './titles.ts';

const handlers: Handlers<PlainKind> = {
  ...wholeHandlers,
  ...runHandlers,
  ...zoneHandlers,
  ...patternHandlers,
  ...lookHandlers,
  ...trackHandlers,
  ...clipHandlers,
  ...buttonHandlers,
};

const expansions: Expansions<ShorthandKind> = {
  ...runExpansions,
  ...lookExpansions,
  ...clipExpansions,
  ...keyExpansions,
};

/** A piece that may break rules between its parts, and the inverse; or why the edit cannot even be tried. */
export function perform(piece: Piece, edit: Edit): Outcome {
  if (isTogether(edit)) return performAll(piece, edit.name, edit.edits);
  if (isShorthand(edit)) return given(expand(piece, edit), (plain) => perform(piece, plain));
  return (handlers[edit.kind] as (piece: Piece, edit: PlainEdit) => Outcome)(piece, edit);
}

/** One after the other; the inverse goes back in the opposite order. */
function performAll(piece: Piece, name: string, edits: readonly Edit[]): Outcome {
  let now = piece;
  const inverses: Edit[] = [];
  for (const edit of edits) {
    const { value, diagnostics } = perform(now, edit);
    if (value === undefined) return { diagnostics };
    now = value.piece;
    inverses.unshift(value.inverse);
  }
  return found({ piece: now, inverse: together(name, inverses) });
}

/** The plain edits that a shorthand stands for here, with all that was computed inside of its bounds. */
function expand(piece: Piece, edit: Shorthand): Checked<Edit> {
  const expansion = expansions[edit.kind] as (piece: Piece, edit: Shorthand) => Checked<readonly Edit[]>;
  return given(expansion(piece, edit), (edits) => parseEdit(together(titleOf(edit, piece), edits)));
}

function isTogether(edit: Edit): edit is EditOf<'together'> {
  return edit.kind === 'together';
}

function isShorthand(edit: Exclude<Edit, EditOf<'together'>>): edit is Shorthand {
  return Object.hasOwn(expansions, edit.kind);
}
