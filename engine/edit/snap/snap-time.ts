import type { Look } from '../../piece/schema.ts';
import type { ClipAddress } from '../kinds/addresses.ts';

/** The nearest target within reach, or the wanted time itself, to the millisecond. */
export function snapTime(wanted: number, targets: Iterable<number>, reach: number): number {
  let best = Math.round(wanted);
  let nearest = reach;
  for (const target of targets) {
    const distance = Math.abs(target - wanted);
    if (distance > nearest) continue;
    best = target;
    nearest = distance;
  }
  return best;
}

/** Times at which the eye expects an edge: both ends of the look, and of every clip but the one that moves. */
export function edgesOf(look: Look, without?: Pick<ClipAddress, 'track' | 'clip'>): number[] {
  const edges = look.tracks.flatMap(({ clips }, track) =>
    clips
      .filter((_, clip) => track !== without?.track || clip !== without.clip)
      .flatMap(({ startMilliseconds, lengthMilliseconds }) => [
        startMilliseconds,
        startMilliseconds + lengthMilliseconds,
      ]),
  );
  return [...new Set([0, look.lengthMilliseconds, ...edges])].sort((a, b) => a - b);
}

/** Where a clip of this length begins when either of its ends may snap: the one that is nearer to a target does. */
export function snapClip(start: number, length: number, targets: readonly number[], reach: number): number {
  return snapTime(start, [...targets, ...targets.map((target) => target - length)], reach);
}
