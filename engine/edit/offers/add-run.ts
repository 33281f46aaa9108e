import type { Piece, Shape } from '../../piece/schema.ts';
import type { EditOf } from '../edit.ts';
import { namesOf } from '../references.ts';
import { freeName } from './free-name.ts';

/**
 * One more run at the end of the line, behind the last one that there is. Its name is the wanted one, or
 * counts on from it where that is taken: read it from the edit's `run.name`.
 */
export function newRun(piece: Piece, shape: Shape, baseName: string): EditOf<'add-run'> {
  const name = freeName(baseName, namesOf(piece, 'zone'));
  const line = piece.lines.length - 1;
  const run = { name, flat: shape, removed: [], hidden: [] };
  return { kind: 'add-run', line, index: piece.lines[line]!.runs.length, run };
}
