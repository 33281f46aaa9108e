import type { Clip, Piece } from '../../piece/schema.ts';
import type { Edit } from '../edit.ts';
import type { ClipAddress } from '../kinds/addresses.ts';

/** An edit for each clip that passes the test; the last clip of a track first, so that removals do not shift others. */
export function editsOfClips(
  piece: Piece,
  test: (clip: Clip) => boolean,
  edit: (at: ClipAddress, clip: Clip) => Edit,
): Edit[] {
  return piece.looks.flatMap(({ name, tracks }) =>
    tracks.flatMap(({ clips }, track) =>
      clips
        .map((clip, index) => ({ at: { look: name, track, clip: index }, clip }))
        .filter(({ clip }) => test(clip))
        .reverse()
        .map(({ at, clip }) => edit(at, clip)),
    ),
  );
}
