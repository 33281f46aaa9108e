/** Edits that come of a swatch, by where it is used. */
import { type Edit, together } from '../../../engine/edit/edit.ts';
import { freeName } from '../../../engine/edit/offers/free-name.ts';
import { type ClipWanted, layClip, placeForClip } from '../../../engine/edit/offers/lay-clip.ts';
import { namesOf } from '../../../engine/edit/references.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { clipAt } from '../session/clip-at.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import type { Swatch } from './swatch.ts';

/** An edit that lays a clip, and where that clip comes to lie. */
export interface Laying {
  readonly edit: Edit;
  readonly at: ClipPosition;
}

/** Where the hand and the eye are. */
export interface Spot {
  /** Index of the look that plays. */
  readonly look: number;
  /** In the time of the look. */
  readonly ms: number;
  readonly selected: ClipPosition | null;
}

/** On the track of the clip in hand and on its pixels; without one, on all pixels. Null where no look is. */
export function layAtHand(piece: Piece, pattern: string, { look, ms, selected }: Spot): Laying | null {
  const inHand = selected?.look === look ? selected : null;
  const clip = inHand === null ? undefined : clipAt(piece, inHand);
  return lay(piece, look, {
    pattern,
    zone: clip?.zone ?? 'all',
    atMilliseconds: ms,
    ...(inHand !== null && clip !== undefined && { track: inHand.track }),
  });
}

/** On one run: in the topmost track that has nothing but that run, or on a new one. */
export function layOnRun(
  piece: Piece,
  pattern: string,
  run: string,
  { look, ms }: Omit<Spot, 'selected'>,
): Laying | null {
  const tracks = piece.looks[look]?.tracks ?? [];
  const ofRun = tracks.map(({ clips }) => clips.length > 0 && clips.every(({ zone }) => zone === run));
  const track = ofRun.lastIndexOf(true);
  return lay(piece, look, {
    pattern,
    zone: run,
    atMilliseconds: ms,
    track: track < 0 ? emptyTrack(tracks) : track,
  });
}

function emptyTrack(tracks: readonly { readonly clips: readonly unknown[] }[]): number | 'new' {
  const empty = tracks.findIndex(({ clips }) => clips.length === 0);
  return empty < 0 ? 'new' : empty;
}

/** The piece gets a pattern of its own, a copy of the swatch's, and a clip that plays it. */
export function layOwn(piece: Piece, swatch: Swatch, spot: Spot): Laying | null {
  const name = freeName(`my ${swatch.title.toLowerCase().replace(/^my /, '')}`, namesOf(piece, 'pattern'));
  const laying = layAtHand(piece, name, spot);
  if (laying === null) return null;
  const pattern = { name, source: swatch.source, parameters: [...swatch.parameters] };
  const add: Edit = { kind: 'add-pattern', index: piece.patterns.length, pattern };
  return { ...laying, edit: together(`Start ${name}`, [add, laying.edit]) };
}

function lay(piece: Piece, look: number, wanted: Omit<ClipWanted, 'look'>): Laying | null {
  const name = piece.looks[look]?.name;
  if (name === undefined) return null;
  const place = placeForClip(piece, { look: name, ...wanted });
  if (place === undefined) return null;
  const { track, clip } = place.at;
  return { edit: layClip(piece, { look: name, ...wanted }), at: { look, track, clip } };
}
