/** Edits of a piece: each takes a piece and gives another, sharing what has not changed. */
import type {
  Clip,
  ParameterDescription,
  ParameterValue,
  PatternDefinition,
  Piece,
} from '../../../engine/piece/schema.ts';
import type { ClipPosition } from '../worker/protocol.ts';

export function clipAt(piece: Piece, { look, track, clip }: ClipPosition): Clip | undefined {
  return piece.looks[look]?.tracks[track]?.clips[clip];
}

function replaced<T>(list: readonly T[], at: number, change: (item: T) => T): T[] {
  return list.map((item, index) => (index === at ? change(item) : item));
}

export function editClip(piece: Piece, at: ClipPosition, change: Partial<Clip>): Piece {
  const looks = replaced(piece.looks, at.look, (look) => ({
    ...look,
    tracks: replaced(look.tracks, at.track, (track) => ({
      ...track,
      clips: replaced(track.clips, at.clip, (clip) => ({ ...clip, ...change })),
    })),
  }));
  return { ...piece, looks };
}

export function setParameter(piece: Piece, at: ClipPosition, name: string, value: ParameterValue): Piece {
  const clip = clipAt(piece, at);
  if (clip === undefined) return piece;
  return editClip(piece, at, { parameters: { ...clip.parameters, [name]: value } });
}

export function setStartBrightness(piece: Piece, startBrightness: number): Piece {
  return { ...piece, output: { ...piece.output, startBrightness } };
}

/** Another text for a pattern of the piece's own, with the descriptions that go with it. */
export function rewritePattern(
  piece: Piece,
  name: string,
  source: string,
  parameters: readonly ParameterDescription[],
): Piece {
  const at = piece.patterns.findIndex((pattern) => pattern.name === name);
  const patterns = replaced(piece.patterns, at, () => ({ name, source, parameters: [...parameters] }));
  return { ...piece, patterns };
}

/** The clip plays a pattern of the piece's own from now on, a copy of what it played before. */
export function makeOwnPattern(piece: Piece, at: ClipPosition, copy: Omit<PatternDefinition, 'name'>): Piece {
  const clip = clipAt(piece, at);
  if (clip === undefined) return piece;
  const name = freeName(clip.pattern.replace(/\/\d+$/, ''), piece);
  const patterns = [...piece.patterns, { ...copy, name }];
  return editClip({ ...piece, patterns }, at, { pattern: name });
}

/** `my tide`, `my tide 2`, ... */
function freeName(base: string, piece: Piece): string {
  const taken = new Set(piece.patterns.map((pattern) => pattern.name));
  const first = `my ${base.replace(/^my /, '')}`.slice(0, 36);
  for (let count = 1; ; count++) {
    const name = count === 1 ? first : `${first} ${count}`;
    if (!taken.has(name)) return name;
  }
}
