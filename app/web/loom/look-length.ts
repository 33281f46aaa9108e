/** How long a look becomes whose lower end is pulled. */
import { clamp } from '../../../engine/edit/snap/free-room.ts';
import { snapTime } from '../../../engine/edit/snap/snap-time.ts';
import { lookLength } from '../../../engine/piece/schema/values.ts';
import type { Look } from '../../../engine/piece/schema.ts';

export const shortestLook = lookLength.minValue!;
export const longestLook = lookLength.maxValue!;

/** Where nothing else is expected, round figures are. */
const roundMilliseconds = 100;

/**
 * The wanted length, or the nearest end of a clip or whole second within reach.
 * @param look as it was when the hand began
 * @param reach in milliseconds; 0 takes the hand at its word
 */
export function pulledLength(look: Look, wanted: number, reach: number): number {
  if (reach <= 0) return clamp(Math.round(wanted), shortestLook, longestLook);
  const ends = look.tracks.flatMap(({ clips }) =>
    clips.map(({ startMilliseconds, lengthMilliseconds }) => startMilliseconds + lengthMilliseconds),
  );
  const second = Math.round(wanted / 1000) * 1000;
  const near = snapTime(wanted, [...ends, second, look.lengthMilliseconds], reach);
  const isExpected = near !== Math.round(wanted);
  const length = isExpected ? near : Math.round(wanted / roundMilliseconds) * roundMilliseconds;
  return clamp(length, shortestLook, longestLook);
}
