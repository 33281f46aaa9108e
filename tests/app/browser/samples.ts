/** The samples as the engine knows them, to compare the page with. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { prepareScore } from '../../../engine/look/prepare.ts';
import type { Score } from '../../../engine/look/score.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { Piece } from '../../../engine/piece/schema.ts';

const folder = join(import.meta.dirname, '../../../samples');

export function sampleText(name: string): string {
  return readFileSync(join(folder, `${name}.piece.json`), 'utf8');
}

export function samplePiece(name: string): Piece {
  const { value, diagnostics } = loadPiece(sampleText(name));
  if (value === undefined) throw new Error(`The sample ${name} does not load: ${diagnostics[0]?.message}`);
  return value;
}

export function scoreOf(piece: Piece): Score {
  const { value, diagnostics } = prepareScore(piece);
  if (value === undefined) throw new Error(`${piece.name} does not prepare: ${diagnostics[0]?.message}`);
  return value;
}
