import { limits } from '../../piece/limits.ts';
import type { Course } from '../courses/course.ts';

/**
 * The time nearest to the wanted one at which no other key stands, whole and not below 0; of two as near, the
 * earlier one.
 * @param without index of the key itself, if it is being moved
 */
export function fitKey(course: Course, wanted: number, without?: number): number {
  const taken = new Set(
    course.filter((_, index) => index !== without).map(({ atMilliseconds }) => atMilliseconds),
  );
  const isFree = (ms: number) => ms >= 0 && ms <= limits.lookMilliseconds && !taken.has(ms);
  const ms = Math.min(limits.lookMilliseconds, Math.max(0, Math.round(wanted)));
  // Among more times than there are keys, one is free.
  for (let away = 0; away <= taken.size; away++) {
    if (isFree(ms - away)) return ms - away;
    if (isFree(ms + away)) return ms + away;
  }
  return ms;
}
