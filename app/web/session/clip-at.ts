/** A clip by its position on the page, and the address that edits have for it. */
import type { ClipAddress } from '../../../engine/edit/kinds/addresses.ts';
import type { Clip, Piece } from '../../../engine/piece/schema.ts';
import type { ClipPosition } from '../worker/protocol.ts';

export function clipAt(piece: Piece, { look, track, clip }: ClipPosition): Clip | undefined {
  return piece.looks[look]?.tracks[track]?.clips[clip];
}

/** @param position of a clip that is there */
export function clipAddress(piece: Piece, { look, track, clip }: ClipPosition): ClipAddress {
  return { look: piece.looks[look]!.name, track, clip };
}
