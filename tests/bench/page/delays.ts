/** From what was seen of a drag: how long each move of the hand took to be on screen. */
import type { Seen } from './watch.ts';

export interface Delays {
  readonly picture: readonly number[];
  readonly loom: readonly number[];
  /** The later of the two, move by move. */
  readonly both: readonly number[];
}

/**
 * A move is in the picture when a frame for its edit, or for a later one, has been drawn and shown; on the
 * loom when every row of the clip in hand has come for it, and its canvas has been painted and shown.
 * @param clip in hand, as `look.track.clip`
 */
export function delaysOf(seen: readonly Seen[], clip: string): Delays {
  const moves = seen.flatMap((entry, index) => {
    if (entry.what !== 'hand') return [];
    const edit = seen.slice(index).find((later) => later.what === 'edit');
    if (edit?.what !== 'edit') return [];
    const picture = shownAfter(
      seen,
      index,
      (one) => one.what === 'frame' && one.revision >= edit.revision,
      'picture',
    );
    const loom = shownAfter(
      seen,
      index,
      (one) => one.what === 'cloth' && one.clip === clip && one.revision >= edit.revision,
      'loom',
    );
    return picture === null || loom === null ? [] : [{ picture: picture - entry.at, loom: loom - entry.at }];
  });
  return {
    picture: moves.map(({ picture }) => picture),
    loom: moves.map(({ loom }) => loom),
    both: moves.map(({ picture, loom }) => Math.max(picture, loom)),
  };
}

/** When the first drawing of a kind was shown that followed a certain event; null if it never was. */
function shownAfter(
  seen: readonly Seen[],
  from: number,
  isEvent: (one: Seen) => boolean,
  drawing: 'picture' | 'loom',
): number | null {
  const rest = seen.slice(from);
  const event = rest.findIndex(isEvent);
  if (event < 0) return null;
  const drawn = rest.findIndex(
    (one, index) => index > event && one.what === drawing && (!('inHand' in one) || one.inHand),
  );
  if (drawn < 0) return null;
  return rest.slice(drawn).find(({ what }) => what === 'shown')?.at ?? null;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
