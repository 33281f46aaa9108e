import type { Clip, Look } from '../../piece/schema.ts';
import type { ClipAddress } from '../kinds/addresses.ts';
import { shortestClip } from '../kinds/clips.ts';
import { clamp, endOf, gapsOf } from './free-room.ts';

export type Extent = Pick<Clip, 'startMilliseconds' | 'lengthMilliseconds'>;

/**
 * A clip with one edge pulled as near to a time as its neighbours, the look and the shortest clip allow; the
 * other edge stays. Undefined where there is no such clip.
 */
export function fitEdge(
  look: Look,
  at: Pick<ClipAddress, 'track' | 'clip'>,
  edge: 'start' | 'end',
  wanted: number,
): Extent | undefined {
  const track = look.tracks[at.track];
  const clip = track?.clips[at.clip];
  if (track === undefined || clip === undefined) return undefined;
  const { startMilliseconds: start, lengthMilliseconds: length } = clip;
  const room = gapsOf(look, track, at.clip).find(({ from, to }) => from <= start && start < to);
  const ms = Math.round(wanted);
  if (edge === 'start') {
    const from = clamp(ms, room?.from ?? start, start + length - shortestClip);
    return { startMilliseconds: from, lengthMilliseconds: start + length - from };
  }
  const latest = clip.endless ? look.lengthMilliseconds : (room?.to ?? endOf(clip));
  const to = clamp(ms, start + shortestClip, Math.max(latest, start + length));
  return { startMilliseconds: start, lengthMilliseconds: to - start };
}
