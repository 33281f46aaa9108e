import type { Checked } from '../../diagnostic.ts';
import type { Piece } from '../../piece/schema.ts';
import type { Edit, EditOf, ShorthandKind } from '../edit.ts';

/** What each shorthand of some kinds stands for; a kind without an answer does not compile. */
export type Expansions<Kind extends ShorthandKind> = {
  readonly [K in Kind]: (piece: Piece, edit: EditOf<K>) => Checked<readonly Edit[]>;
};
