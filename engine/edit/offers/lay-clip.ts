/** A new clip of a pattern, laid where a look has room for it. */
import { newClip, newTrack } from '../../piece/blank.ts';
import type { Look, Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import type { ClipAddress } from '../kinds/addresses.ts';
import { clamp, gapsOf, type Room } from '../snap/free-room.ts';
import { titleOf } from '../titles.ts';

export interface ClipWanted {
  readonly look: string;
  /** Such as `tide/1`, or the name of a pattern of the piece. */
  readonly pattern: string;
  /** A zone or a run; without one, `all`. */
  readonly zone?: string;
  /** `new` for one on top of the others; without one, the topmost. What is there already stays as it is. */
  readonly track?: number | 'new';
  /** In the time of the look. */
  readonly atMilliseconds: number;
  /** At most so long; without it, as long as there is room. */
  readonly lengthMilliseconds?: number;
}

export interface ClipPlace {
  readonly at: ClipAddress;
  readonly startMilliseconds: number;
  readonly lengthMilliseconds: number;
  /** Whether the track is a new one, put in at that index. */
  readonly newTrack: boolean;
}

/** Shorter than this, a clip can hardly be seen or taken hold of. */
const leastMilliseconds = 250;

/**
 * Where `layClip` lays a clip: in the first free room of the track from the wanted moment on, or, where there
 * is none, on a new track right above it. For whoever wants to show it beforehand, or to take hold of the
 * clip afterwards. Undefined where there is no such look or track.
 */
export function placeForClip(piece: Piece, wanted: ClipWanted): ClipPlace | undefined {
  const look = piece.looks.find(({ name }) => name === wanted.look);
  if (look === undefined) return undefined;
  const above = look.tracks.length;
  const track = wanted.track === 'new' ? above : (wanted.track ?? Math.max(0, above - 1));
  const lane = look.tracks[track];
  if (lane === undefined) return track === above ? onNewTrack(look, above, wanted) : undefined;
  const room = roomFrom(gapsOf(look, lane), look, wanted.atMilliseconds);
  if (room === undefined) return onNewTrack(look, track + 1, wanted);
  return {
    ...fitted(room, wanted),
    at: { look: look.name, track, clip: lane.clips.length },
    newTrack: false,
  };
}

/**
 * Adds a clip with its pattern's defaults at `placeForClip`; of patterns that play by chance, each clip plays
 * another chance. An unknown look, track, pattern or zone is for `applyEdit` to refuse.
 */
export function layClip(piece: Piece, wanted: ClipWanted): Edit {
  const { look, pattern, zone = 'all' } = wanted;
  const { newTrack: isNew, at, ...times } = placeForClip(piece, wanted) ?? nowhere(wanted);
  const clip = newClip({ pattern, zone, ...times }, clipsOf(piece, pattern));
  const add: Edit = { kind: 'add-clip', at, clip };
  if (!isNew) return add;
  const lane: Edit = { kind: 'add-track', at: { look, track: at.track }, track: newTrack() };
  return together(titleOf(add, piece), [lane, add]);
}

/** The first of the gaps, or what is left of it from the moment on, that is long enough to be seen. */
function roomFrom(gaps: readonly Room[], look: Look, moment: number): Room | undefined {
  const from = Math.max(0, Math.round(moment));
  const least = Math.min(leastMilliseconds, look.lengthMilliseconds);
  return gaps
    .map((gap) => ({ from: Math.max(gap.from, from), to: gap.to }))
    .find((gap) => gap.to - gap.from >= least);
}

/** There the whole look is free; a clip at its very end begins a little before the moment. */
function onNewTrack(look: Look, track: number, wanted: ClipWanted): ClipPlace {
  const latest = Math.max(0, look.lengthMilliseconds - leastMilliseconds);
  const from = clamp(Math.round(wanted.atMilliseconds), 0, latest);
  const room = { from, to: look.lengthMilliseconds };
  return { ...fitted(room, wanted), at: { look: look.name, track, clip: 0 }, newTrack: true };
}

function fitted({ from, to }: Room, { lengthMilliseconds = to - from }: ClipWanted) {
  return { startMilliseconds: from, lengthMilliseconds: Math.min(to - from, lengthMilliseconds) };
}

/** A place that is refused with the reason. */
function nowhere({ look, track }: ClipWanted): ClipPlace {
  const at = { look, track: typeof track === 'number' ? track : 0, clip: 0 };
  return { at, startMilliseconds: 0, lengthMilliseconds: leastMilliseconds, newTrack: false };
}

function clipsOf(piece: Piece, pattern: string): number {
  const clips = piece.looks.flatMap(({ tracks }) => tracks.flatMap((track) => track.clips));
  return clips.filter((clip) => clip.pattern === pattern).length;
}
