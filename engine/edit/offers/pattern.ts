/** Exchanging a pattern, or what can be set on one, with all that follows for clips. */
import type { Checked } from '../../diagnostic.ts';
import { findLibraryPattern } from '../../pattern/library.ts';
import type { Clip, ParameterDescription, Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import type { ClipAddress } from '../kinds/addresses.ts';
import { found, given } from '../outcome.ts';
import { clipSpot } from '../shelves.ts';
import { editsOfClips } from './clips-where.ts';
import { fitting } from './parameters.ts';

/** Lets a clip play another pattern, and keeps of its parameters what that one knows. */
export function choosePattern(piece: Piece, at: ClipAddress, pattern: string): Checked<Edit> {
  return given(clipSpot(piece, at), ({ item }) => found(playing(piece, at, item, pattern)));
}

export function playing(piece: Piece, at: ClipAddress, clip: Clip, pattern: string): Edit {
  const known = (findLibraryPattern(pattern) ?? piece.patterns.find(({ name }) => name === pattern))
    ?.parameters;
  return { kind: 'set-clip', at, set: { pattern, parameters: fitting(clip.parameters, known ?? []) } };
}

/** Sets what can be set on a pattern of the piece's own; clips that have set something else are made to fit. */
export function setPatternParameters(
  piece: Piece,
  pattern: string,
  parameters: ParameterDescription[],
): Edit {
  const followUps = editsOfClips(
    piece,
    (clip) => clip.pattern === pattern && fitting(clip.parameters, parameters) !== clip.parameters,
    (at, clip) => ({ kind: 'set-clip', at, set: { parameters: fitting(clip.parameters, parameters) } }),
  );
  const set: Edit = { kind: 'set-pattern', pattern, set: { parameters } };
  return together(`Set parameters of pattern ${pattern}`, [set, ...followUps]);
}
