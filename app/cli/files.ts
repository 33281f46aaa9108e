/** Pieces from files. */
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Checked, type Diagnostic, hasErrors } from '../../engine/diagnostic.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import type { ChipName } from '../../engine/parts/chips.ts';
import { checkPiece, loadPiece } from '../../engine/piece/load.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { type FiledDiagnostic, faulty, wrongUsage } from './failure.ts';
import type { Terminal } from './terminal.ts';

export interface Opened {
  readonly score: Score;
  /** Warnings only. */
  readonly diagnostics: readonly FiledDiagnostic[];
}

/** What is to be known of a piece, with a score if it has no errors. `board` takes the place of its own. */
export async function examine(
  file: string,
  terminal: Terminal,
  board?: ChipName,
): Promise<{ score?: Score; diagnostics: readonly FiledDiagnostic[] }> {
  const loaded = movedTo(board, loadPiece(await readText(file, terminal)));
  if (loaded.value === undefined) return { diagnostics: filed(file, loaded.diagnostics) };
  const { value, diagnostics } = prepareScore(loaded.value);
  const all = filed(file, [...loaded.diagnostics, ...diagnostics]);
  return value === undefined ? { diagnostics: all } : { score: value, diagnostics: all };
}

/** Another chip has other pins, so that the piece must be checked again. */
function movedTo(board: ChipName | undefined, loaded: Checked<Piece>): Checked<Piece> {
  if (board === undefined || loaded.value === undefined || loaded.value.board === board) return loaded;
  return checkPiece({ ...loaded.value, board });
}

/** The score of a piece, or a failure with all that is wrong with it. */
export async function open(file: string, terminal: Terminal, board?: ChipName): Promise<Opened> {
  const { score, diagnostics } = await examine(file, terminal, board);
  if (score === undefined || hasErrors(diagnostics)) throw faulty(diagnostics);
  return { score, diagnostics };
}

export function filed(file: string, diagnostics: readonly Diagnostic[]): FiledDiagnostic[] {
  return diagnostics.map((diagnostic) => ({ file, ...diagnostic }));
}

async function readText(file: string, terminal: Terminal): Promise<string> {
  try {
    return await readFile(resolve(terminal.folder, file), 'utf8');
  } catch (problem) {
    const { code } = problem as NodeJS.ErrnoException;
    const reason = code === 'ENOENT' ? 'is not there' : `cannot be read (${code})`;
    throw wrongUsage('file-unreadable', `The file ${file} ${reason}.`, 'Check its name and the folder.');
  }
}
