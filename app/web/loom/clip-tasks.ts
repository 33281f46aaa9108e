/** Edits of a clip that need a place first: the same once more, and one from the clipboard. */
import { type Edit, together } from '../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../engine/edit/kinds/addresses.ts';
import { fitClip } from '../../../engine/edit/snap/fit-clip.ts';
import { titleOf } from '../../../engine/edit/titles.ts';
import { newTrack } from '../../../engine/piece/blank.ts';
import type { Clip, Piece } from '../../../engine/piece/schema.ts';

export interface Laid {
  readonly edit: Edit;
  readonly at: ClipAddress;
}

/** The same clip behind itself, or where else its track has room; else on a track right above. */
export function clipAgain(piece: Piece, at: ClipAddress): Laid | null {
  const clip = piece.looks.find(({ name }) => name === at.look)?.tracks[at.track]?.clips[at.clip];
  if (clip === undefined) return null;
  return laid(piece, at.look, at.track, clip, clip.startMilliseconds + clip.lengthMilliseconds);
}

/** A clip that was copied, from the moment on; cut where the look is shorter than it. */
export function clipPasted(
  piece: Piece,
  look: string,
  track: number,
  copied: Clip,
  moment: number,
): Laid | null {
  const length = piece.looks.find(({ name }) => name === look)?.lengthMilliseconds;
  if (length === undefined) return null;
  const clip = { ...copied, lengthMilliseconds: Math.min(copied.lengthMilliseconds, length) };
  return laid(piece, look, track, clip, moment);
}

function laid(piece: Piece, name: string, track: number, clip: Clip, wanted: number): Laid | null {
  const look = piece.looks.find((other) => other.name === name);
  if (look === undefined) return null;
  const start = fitClip(look, track, { ...clip, startMilliseconds: wanted });
  if (start !== undefined) {
    const at = { look: name, track, clip: look.tracks[track]!.clips.length };
    return { at, edit: { kind: 'add-clip', at, clip: { ...clip, startMilliseconds: start } } };
  }
  const above = Math.min(track + 1, look.tracks.length);
  const at = { look: name, track: above, clip: 0 };
  const latest = look.lengthMilliseconds - (clip.endless ? 0 : clip.lengthMilliseconds);
  const startMilliseconds = Math.max(0, Math.min(Math.round(wanted), latest));
  const add: Edit = { kind: 'add-clip', at, clip: { ...clip, startMilliseconds } };
  const lane: Edit = { kind: 'add-track', at: { look: name, track: above }, track: newTrack() };
  return { at, edit: together(titleOf(add, piece), [lane, add]) };
}
