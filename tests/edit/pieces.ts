/** Pieces to edit: the samples, and random ones. */
import { readFileSync } from 'node:fs';
import type { Checked } from '../../engine/diagnostic.ts';
import { checkPiece, loadPiece } from '../../engine/piece/load.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { generatePiece } from '../support/generate-piece.ts';

export function sample(name: string): Piece {
  const path = new URL(`../../samples/${name}.piece.json`, import.meta.url);
  return sound(loadPiece(readFileSync(path, 'utf8')));
}

export function generated(seed: number): Piece {
  return sound(checkPiece(generatePiece(seed)));
}

/** The value of what must have one. */
export function sound<T>({ value, diagnostics }: Checked<T>): T {
  if (value === undefined) throw new Error(JSON.stringify(diagnostics, null, 1));
  return value;
}

/** One character for another changes this: key order counts, as it does in a file. */
export const textOf = (piece: unknown) => JSON.stringify(piece);

/** The same value, and from now on an error for whoever writes into it. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}
