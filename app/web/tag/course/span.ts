/** The stretch of time in which a clip's keys lie, and where the playhead is in it. */
import type { Course } from '../../../../engine/edit/courses/course.ts';
import type { Clip, Look } from '../../../../engine/piece/schema.ts';

/** When a clip is on. */
export interface Times extends Pick<Clip, 'startMilliseconds' | 'lengthMilliseconds' | 'endless'> {
  /** The length of its look. */
  readonly loopMilliseconds: number;
}

export function timesOf(
  { startMilliseconds, lengthMilliseconds, endless }: Clip,
  { lengthMilliseconds: loopMilliseconds }: Look,
): Times {
  return { startMilliseconds, lengthMilliseconds, endless, loopMilliseconds };
}

/** How long the clip is in sight: an endless one as long as a loop of its look. */
export function shownLength(times: Times): number {
  return times.endless ? times.loopMilliseconds : times.lengthMilliseconds;
}

/** Room for every key, also for those that a shortened clip has left behind its end. */
export function spanOf(times: Times, course: Course): number {
  return Math.max(shownLength(times), course.at(-1)?.atMilliseconds ?? 0);
}

/** Milliseconds since the clip began; held at its ends while it is not on. */
export function clipTimeAt(times: Times, lookMs: number): number {
  const { endless, loopMilliseconds, startMilliseconds, lengthMilliseconds } = times;
  const ms = (endless ? lookMs : lookMs % loopMilliseconds) - startMilliseconds;
  return Math.max(0, endless ? ms : Math.min(ms, lengthMilliseconds));
}

/** The other way round. The very end of a clip is no longer part of it. */
export function lookTimeAt(
  { startMilliseconds, lengthMilliseconds, endless }: Times,
  clipMs: number,
): number {
  const last = endless ? clipMs : lengthMilliseconds - 1;
  return startMilliseconds + Math.max(0, Math.min(Math.round(clipMs), last));
}
