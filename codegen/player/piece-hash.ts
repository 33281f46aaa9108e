/** A short name for the exact content of a piece: two sketches with the same hash came from the same piece. */
import type { Piece } from '../../engine/piece/schema.ts';
import { utf8 } from './text.ts';

/** FNV-1a, 64 bits: draft-eastlake-fnv, section 2. */
export function fnv1a(bytes: readonly number[]): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of bytes) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  return hash;
}

/** 16 hexadecimal digits. Defaults count as if they were written out, the order of keys does not matter. */
export function pieceHash(piece: Piece): string {
  return fnv1a(utf8(JSON.stringify(sorted(piece))))
    .toString(16)
    .padStart(16, '0');
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return entries.map(([key, inner]) => [key, sorted(inner)]);
}
