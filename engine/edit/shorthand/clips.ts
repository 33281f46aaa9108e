import type { Clip, ParameterValue, Piece } from '../../piece/schema.ts';
import { type Course, courseOf, descriptionOf, valueOfCourse } from '../courses/course.ts';
import { courseFrom, courseUntil } from '../courses/cut.ts';
import { shortestClip } from '../kinds/clips.ts';
import { found, given, refused } from '../outcome.ts';
import { clipSpot } from '../shelves.ts';
import type { Expansions } from './expansions.ts';

export const clipExpansions: Expansions<'duplicate-clip' | 'trim-clip' | 'split-clip'> = {
  'duplicate-clip': (piece, { at, to, startMilliseconds }) =>
    given(clipSpot(piece, at), ({ item }) =>
      found([{ kind: 'add-clip', at: to, clip: { ...item, startMilliseconds } } as const]),
    ),

  /** Keyframes stay where they are in the look, so their times in the clip change with its start. */
  'trim-clip': (piece, { at, startMilliseconds, lengthMilliseconds }) =>
    given(clipSpot(piece, at), ({ item }) => {
      const begun = startMilliseconds - item.startMilliseconds;
      const parameters = begun === 0 ? item.parameters : parametersFrom(piece, item, begun);
      const set = {
        startMilliseconds,
        ...ofLength(item, lengthMilliseconds),
        ...ifChanged(item, parameters),
      };
      return found([{ kind: 'set-clip', at, set } as const]);
    }),

  'split-clip': (piece, { at, atMilliseconds }) =>
    given(clipSpot(piece, at), ({ item }) => {
      if (item.endless) return endless;
      const first = atMilliseconds - item.startMilliseconds;
      const second = item.lengthMilliseconds - first;
      if (first < shortestClip || second < shortestClip) return tooNarrow;
      const before = withCourses(item, (course) => courseUntil(course, first));
      const after: Clip = {
        ...item,
        startMilliseconds: atMilliseconds,
        fadeInMilliseconds: 0,
        ...ofLength({ ...item, fadeInMilliseconds: 0 }, second),
        parameters: parametersFrom(piece, item, first),
      };
      const set = { ...ofLength(item, first), fadeOutMilliseconds: 0, ...ifChanged(item, before) };
      return found([
        { kind: 'set-clip', at, set },
        { kind: 'add-clip', at: { ...at, clip: at.clip + 1 }, clip: after },
      ] as const);
    }),
};

type Parameters = Clip['parameters'];

/** A length, and the fades where they would be longer. */
function ofLength(clip: Clip, lengthMilliseconds: number): Partial<Clip> {
  const { fadeInMilliseconds, fadeOutMilliseconds } = clip;
  return {
    lengthMilliseconds,
    ...(fadeInMilliseconds > lengthMilliseconds ? { fadeInMilliseconds: lengthMilliseconds } : {}),
    ...(fadeOutMilliseconds > lengthMilliseconds ? { fadeOutMilliseconds: lengthMilliseconds } : {}),
  };
}

const ifChanged = (clip: Clip, parameters: Parameters) =>
  parameters === clip.parameters ? {} : { parameters };

function parametersFrom(piece: Piece, clip: Clip, ms: number): Parameters {
  return withCourses(clip, (course, name) => {
    const description = descriptionOf(piece, clip, name);
    return description === undefined ? course : courseFrom(course, ms, description);
  });
}

/** The clip's parameters with every course changed, or the very same where none is. */
function withCourses(clip: Clip, change: (course: Course, name: string) => Course): Parameters {
  let parameters = clip.parameters;
  for (const [name, value] of Object.entries(clip.parameters)) {
    const course = courseOf(value);
    if (course === undefined) continue;
    const next = change(course, name);
    if (next !== course) parameters = { ...parameters, [name]: valueOfCourse(next) satisfies ParameterValue };
  }
  return parameters;
}

const endless = refused(
  'split-endless',
  'An endless clip goes on over all loops of its look, so it has no halves.',
  'Turn "endless" off first.',
);

const tooNarrow = refused(
  'split-outside',
  `Each half of a clip needs at least ${shortestClip} ms.`,
  'Split it further inside.',
);
