/** The stretch of time in which a clip's keys lie, and where the playhead is in it. */
import type { Course } from '../../../../engine/edit/courses/course.ts';
import type { Clip, Look } from '../../../../engine/piece/schema.ts';

type Times = Pick<Clip, 'startMilliseconds' | 'lengthMilliseconds' | 'endless'>;
type Loop = Pick<Look, 'lengthMilliseconds'>;

/** How long the clip is in sight: an endless one as long as a loop of its look. */
export function shownLength(clip: Times, look: Loop): number {
  return clip.endless ? look.lengthMilliseconds : clip.lengthMilliseconds;
}

/** Room for every key, also for those that a shortened clip has left behind its end. */
export function spanOf(clip: Times, look: Loop, course: Course): number {
  return Math.max(shownLength(clip, look), course.at(-1)?.atMilliseconds ?? 0);
}

/** Milliseconds since the clip began; held at its ends while it is not on. */
export function clipTimeAt(clip: Times, look: Loop, lookMs: number): number {
  const ms = (clip.endless ? lookMs : lookMs % look.lengthMilliseconds) - clip.startMilliseconds;
  return Math.max(0, clip.endless ? ms : Math.min(ms, clip.lengthMilliseconds));
}

/** The other way round. The very end of a clip is no longer part of it. */
export function lookTimeAt(clip: Times, clipMs: number): number {
  const last = clip.endless ? clipMs : clip.lengthMilliseconds - 1;
  return clip.startMilliseconds + Math.max(0, Math.min(Math.round(clipMs), last));
}
