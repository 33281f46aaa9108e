import type { Clip, Look, Track } from '../../piece/schema.ts';
import { clamp, gapsOf, type Room } from './free-room.ts';

export type Wanted = Pick<Clip, 'startMilliseconds' | 'lengthMilliseconds' | 'endless'>;

/**
 * The legal start nearest to where a clip is wanted on a track of the look; of two as near, the earlier one.
 * Undefined where no gap is long enough for it.
 * @param without index of the clip itself, if it lies on this track already
 */
export function fitClip(look: Look, track: number, wanted: Wanted, without?: number): number | undefined {
  const lane = look.tracks[track];
  if (lane === undefined) return undefined;
  const gaps = wanted.endless ? lastGap(look, lane, without) : gapsOf(look, lane, without);
  const starts = gaps.flatMap(({ from, to }) => {
    const latest = wanted.endless ? to : to - wanted.lengthMilliseconds;
    return latest < from ? [] : [clamp(Math.round(wanted.startMilliseconds), from, latest)];
  });
  const distance = (start: number) => Math.abs(start - wanted.startMilliseconds);
  return starts.reduce<number | undefined>(
    (best, start) => (best === undefined || distance(start) < distance(best) ? start : best),
    undefined,
  );
}

/** An endless clip has nothing behind it, so only the gap at the end of the look will do. */
function lastGap(look: Look, track: Track, without: number | undefined): readonly Room[] {
  if (track.clips.some(({ endless }, index) => endless && index !== without)) return [];
  return gapsOf(look, track, without).filter(({ to }) => to === look.lengthMilliseconds);
}
