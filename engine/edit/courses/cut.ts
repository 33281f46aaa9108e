/** Courses cut where a clip is split or trimmed, so that every moment keeps the value it had. */
import { levelsOfColour } from '../../fixed/gradient.ts';
import { limits } from '../../piece/limits.ts';
import type { ParameterDescription } from '../../piece/schema.ts';
import type { Key } from '../kinds/keys.ts';
import { easedShare, restOfEasing } from './bezier.ts';
import type { Course } from './course.ts';

/** What can be seen of a course before `ms`: its keys up to there, and the one that it heads for. */
export function courseUntil(course: Course, ms: number): Course {
  const next = course.findIndex(({ atMilliseconds }) => atMilliseconds >= ms);
  return next < 0 ? course : course.slice(0, next + 1);
}

/**
 * The course from `ms` on, with its times counted from there; a negative `ms` begins earlier. Between two
 * keys a new one is put at the cut, and the easing gets the rest of its curve.
 */
export function courseFrom(course: Course, ms: number, parameter: ParameterDescription): Course {
  const passed = course.filter(({ atMilliseconds }) => atMilliseconds <= ms).length;
  const [from, to] = [course[passed - 1], course[passed]];
  const later = shifted(course.slice(passed), -ms);
  if (from === undefined) return later;
  if (to === undefined || from.atMilliseconds === ms) return [{ ...from, atMilliseconds: 0 }, ...later];
  const share = (ms - from.atMilliseconds) / (to.atMilliseconds - from.atMilliseconds);
  const { value, isExact } = between(from, to, share, parameter);
  const easing = restOfEasing(from.easing, share);
  if (isExact && easing !== undefined) return [{ atMilliseconds: 0, value, easing } as Key, ...later];
  return [...inSteps(from, to, ms, parameter, limits.keysPerParameter - later.length), ...later];
}

function shifted(course: Course, by: number): Key[] {
  return course
    .map((key) => ({ ...key, atMilliseconds: key.atMilliseconds + by }))
    .filter(({ atMilliseconds }) => atMilliseconds <= limits.lookMilliseconds);
}

/** What no single easing can say is said in so many straight pieces, if that many keys are left. */
const mostPieces = 16;

function inSteps(from: Key, to: Key, ms: number, parameter: ParameterDescription, free: number): Key[] {
  const whole = to.atMilliseconds - from.atMilliseconds;
  const left = to.atMilliseconds - ms;
  const pieces = Math.max(1, Math.min(mostPieces, free, left));
  return Array.from({ length: pieces }, (_, i) => {
    const atMilliseconds = Math.floor((i * left) / pieces);
    const { value } = between(from, to, (ms + atMilliseconds - from.atMilliseconds) / whole, parameter);
    return { atMilliseconds, value, easing: 'linear' };
  });
}

interface Reached {
  readonly value: number | string;
  /** False where the value would lie outside of what the parameter can be, and is held at its bound. */
  readonly isExact: boolean;
}

/** The value after a share of the way from one key to the next. */
function between(from: Key, to: Key, share: number, parameter: ParameterDescription): Reached {
  const eased = easedShare(from.easing, share);
  if (typeof from.value === 'string') {
    const ends = levelsOfColour(to.value as string);
    const levels = levelsOfColour(from.value).map((level, c) =>
      Math.floor(level + (ends[c]! - level) * eased),
    );
    const held = levels.map((level) => Math.min(255, Math.max(0, level)));
    const value = `#${held.map((level) => level.toString(16).padStart(2, '0')).join('')}`;
    return { value, isExact: held.every((level, c) => level === levels[c]) };
  }
  const exact = from.value + ((to.value as number) - from.value) * eased;
  const reached = parameter.kind === 'whole' ? Math.floor(exact) : exact;
  const { min, max } = 'min' in parameter ? parameter : { min: reached, max: reached };
  const value = Math.min(max, Math.max(min, reached));
  return { value, isExact: value === reached };
}
