/**
 * What a cloth depends on, as a list of values and shared objects of the piece. Edits share what they leave
 * alone, so two cloths of one content are woven alike, and a cloth whose content stays is not woven again.
 */
import type { Clip, Piece } from '../../../engine/piece/schema.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { clipAt } from './clip-at.ts';

export interface ClothSubject {
  readonly look: number;
  readonly clip?: ClipPosition;
}

export type ClothContent = readonly unknown[];

/** Undefined where the piece has no such look or clip. */
export function clothContent(piece: Piece, { look, clip }: ClothSubject): ClothContent | undefined {
  const ground = [piece.lines, piece.zones, piece.patterns, piece.tickMilliseconds];
  if (clip === undefined) {
    const whole = piece.looks[look];
    if (whole === undefined) return undefined;
    // The current depends on the output too.
    return [...ground, whole.tracks, whole.lengthMilliseconds, piece.output, piece.supply];
  }
  const it = clipAt(piece, clip);
  return it === undefined ? undefined : [...ground, ...ownContent(piece, clip, it)];
}

/** A clip begins anew wherever it lies, but for its first tick; an endless one counts on over all loops. */
function ownContent({ looks, tickMilliseconds }: Piece, { look }: ClipPosition, clip: Clip): ClothContent {
  const { pattern, zone, parameters, seed, startMilliseconds: start, lengthMilliseconds, endless } = clip;
  const inLook = endless ? [start, looks[look]!.lengthMilliseconds] : [start % tickMilliseconds];
  return [pattern, zone, parameters, seed, lengthMilliseconds, endless, ...inLook];
}

export function sameContent(a: ClothContent | undefined, b: ClothContent | undefined): boolean {
  if (a === undefined || b === undefined || a.length !== b.length) return false;
  return a.every((value, index) => Object.is(value, b[index]));
}

/** The same clip before and after a little change, as far as one can tell; places are counted anew by edits. */
export function isKin(a: Clip | undefined, b: Clip | undefined): boolean {
  if (a === undefined || b === undefined || a.pattern !== b.pattern || a.zone !== b.zone) return false;
  return a.parameters === b.parameters || a.startMilliseconds === b.startMilliseconds;
}
