import type { Checked } from '../../diagnostic.ts';
import type { ParameterValue, Piece } from '../../piece/schema.ts';
import { clipped } from '../../piece/wording.ts';
import { type Course, courseOf, valueOfCourse } from '../courses/course.ts';
import type { Edit } from '../edit.ts';
import type { ClipAddress } from '../kinds/addresses.ts';
import type { Key } from '../kinds/keys.ts';
import { replaced, without } from '../lists.ts';
import { found, given, type Refusal, refused } from '../outcome.ts';
import { clipSpot, noPlace } from '../shelves.ts';
import type { Expansions } from './expansions.ts';

interface ParameterAddress {
  readonly at: ClipAddress;
  readonly parameter: string;
}

export const keyExpansions: Expansions<'add-key' | 'remove-key' | 'move-key' | 'set-key'> = {
  /** The first key of a parameter that stood still holds its own value throughout. */
  'add-key': (piece, edit) =>
    given(clipSpot(piece, edit.at), ({ item }) =>
      withKey(edit, courseOf(item.parameters[edit.parameter]) ?? [], edit.key),
    ),

  /** Without its last key a parameter stands still, at the value of that one. */
  'remove-key': (piece, edit) =>
    given(courseAt(piece, edit), (course) =>
      onKey(course, edit.key, (key) =>
        set(edit, course.length === 1 ? key.value : valueOfCourse(without(course, edit.key))),
      ),
    ),

  'move-key': (piece, edit) =>
    given(courseAt(piece, edit), (course) =>
      onKey(course, edit.key, (key) =>
        withKey(edit, without(course, edit.key), { ...key, atMilliseconds: edit.toMilliseconds }),
      ),
    ),

  'set-key': (piece, edit) =>
    given(courseAt(piece, edit), (course) =>
      onKey(course, edit.key, (key) =>
        set(edit, valueOfCourse(replaced(course, edit.key, { ...key, ...edit.set } as Key))),
      ),
    ),
};

function courseAt(piece: Piece, { at, parameter }: ParameterAddress): Checked<Course> {
  return given(clipSpot(piece, at), ({ item }) => {
    const course = courseOf(item.parameters[parameter]);
    if (course !== undefined) return found(course);
    const message = `The parameter "${clipped(parameter)}" has no keys.`;
    return refused('key-unknown', message, 'Add a key first.');
  });
}

function onKey(
  course: Course,
  index: number,
  change: (key: Key) => Checked<readonly Edit[]>,
): Checked<readonly Edit[]> {
  const key = course[index];
  return key === undefined ? noPlace('The parameter', 'key', index) : change(key);
}

function withKey(address: ParameterAddress, course: Course, key: Key): Checked<readonly Edit[]> {
  const { atMilliseconds } = key;
  if (course.some((other) => other.atMilliseconds === atMilliseconds)) return timeTaken(atMilliseconds);
  const keys = [...course, key].sort((a, b) => a.atMilliseconds - b.atMilliseconds);
  return set(address, valueOfCourse(keys));
}

function timeTaken(ms: number): Refusal {
  return refused('key-taken', `There is a key at ${ms} ms already.`, 'Choose another time, or set that key.');
}

function set({ at, parameter }: ParameterAddress, value: ParameterValue): Checked<readonly Edit[]> {
  return found([{ kind: 'set-parameter', at, parameter, value }]);
}
