/** Where on a track there is room for a clip. */
import type { Clip, Look, Track } from '../../piece/schema.ts';

export interface Room {
  readonly from: number;
  readonly to: number;
}

/**
 * The gaps of a track in order of time, the last one up to the end of the look. Behind the start of an
 * endless clip there is none.
 * @param without index of a clip that is not counted, because it is the one that looks for a place
 */
export function gapsOf(look: Look, track: Track, without?: number): Room[] {
  const others = track.clips
    .filter((_, index) => index !== without)
    .sort((a, b) => a.startMilliseconds - b.startMilliseconds);
  const gaps: Room[] = [];
  let from = 0;
  for (const clip of others) {
    gaps.push({ from, to: Math.min(clip.startMilliseconds, look.lengthMilliseconds) });
    from = endOf(clip);
  }
  gaps.push({ from, to: look.lengthMilliseconds });
  return gaps.filter((gap) => gap.to > gap.from);
}

/** Where a clip ends on its track in the first loop; never, if it is endless. */
export function endOf({ startMilliseconds, lengthMilliseconds, endless }: Clip): number {
  return endless ? Number.POSITIVE_INFINITY : startMilliseconds + lengthMilliseconds;
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
