import type { Checked } from '../../diagnostic.ts';
import type { Clip, Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import { shortestClip } from '../kinds/clips.ts';
import { found, given } from '../outcome.ts';
import { lookSpot } from '../shelves.ts';
import { editsOfClips } from './clips-where.ts';

/** Makes a look longer, or shorter: clips end with it at the latest, and those wholly beyond are removed. */
export function changeLength(piece: Piece, look: string, lengthMilliseconds: number): Checked<Edit> {
  return given(lookSpot(piece, look), ({ item }) => {
    const isCut = (clip: Clip) =>
      !clip.endless && clip.startMilliseconds + clip.lengthMilliseconds > lengthMilliseconds;
    const clips = editsOfClips({ ...piece, looks: [item] }, isCut, (at, { startMilliseconds }): Edit => {
      const left = lengthMilliseconds - startMilliseconds;
      if (left < shortestClip) return { kind: 'remove-clip', at };
      return { kind: 'trim-clip', at, startMilliseconds, lengthMilliseconds: left };
    });
    const set: Edit = { kind: 'set-look', look, set: { lengthMilliseconds } };
    return found(together(`Set length of look ${look}`, [...clips, set]));
  });
}
