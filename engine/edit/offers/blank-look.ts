import { newLook } from '../../piece/blank.ts';
import type { Piece } from '../../piece/schema.ts';
import type { EditOf } from '../edit.ts';
import { namesOf } from '../references.ts';
import { freeName } from './free-name.ts';

/**
 * One more look on the thread, dark, with one empty track. Its name is the wanted one, or counts on from it:
 * read it from the edit's `look.name`.
 * @param after the look behind which it comes; without one, or if there is none of that name, the last
 */
export function blankLook(piece: Piece, baseName: string, after?: string): EditOf<'add-look'> {
  const { looks } = piece;
  const before = looks.findIndex(({ name }) => name === after);
  const index = before < 0 ? looks.length : before + 1;
  return { kind: 'add-look', index, look: newLook(freeName(baseName, namesOf(piece, 'look'))) };
}
