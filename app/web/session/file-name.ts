/** Names of files. */
import type { Piece } from '../../../engine/piece/schema.ts';

/** A name that every file system takes. */
export function fileStem({ name }: Pick<Piece, 'name'>): string {
  const plain = name
    .normalize('NFKD')
    .replace(/['\u2019\p{M}]/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'piece' : plain;
}
