/** What a hand does to keys, as edits. */
import type { Course } from '../../../../engine/edit/courses/course.ts';
import type { Edit, SingleEdit } from '../../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../../engine/edit/kinds/addresses.ts';
import type { Key } from '../../../../engine/edit/kinds/keys.ts';
import { fitKey } from '../../../../engine/edit/snap/fit-key.ts';
import { titleOf } from '../../../../engine/edit/titles.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';

export interface CourseAddress {
  readonly at: ClipAddress;
  readonly parameter: string;
}

export interface KeyWanted {
  readonly atMilliseconds?: number;
  readonly value?: Key['value'];
}

/**
 * A key brought as near to where it is wanted as other keys allow; of one name all along, so that a drag in
 * both directions is one step. Undefined where nothing changes.
 * @returns the edit, and the index that the key has after it
 */
export function placeKey(
  piece: Piece,
  address: CourseAddress,
  course: Course,
  key: number,
  wanted: KeyWanted,
): { edit: Edit; index: number } | undefined {
  const before = course[key];
  if (before === undefined) return undefined;
  const ms = fitKey(course, wanted.atMilliseconds ?? before.atMilliseconds, key);
  const move: SingleEdit = { kind: 'move-key', ...address, key, toMilliseconds: ms };
  const edits: SingleEdit[] = [];
  // The value first: the index is another one once the key has passed its neighbour.
  if (wanted.value !== undefined && wanted.value !== before.value)
    edits.push({ kind: 'set-key', ...address, key, set: { value: wanted.value } });
  if (ms !== before.atMilliseconds) edits.push(move);
  if (edits.length === 0) return undefined;
  const index = course.filter((other, i) => i !== key && other.atMilliseconds < ms).length;
  return { edit: { kind: 'together', name: titleOf(move, piece), edits }, index };
}

/**
 * A key at the nearest free time; it goes on as the way did on which it stands.
 * @returns the edit, and the index of the new key
 */
export function newKey(
  address: CourseAddress,
  course: Course,
  wantedMs: number,
  value: Key['value'],
): { edit: Edit; index: number } {
  const atMilliseconds = fitKey(course, wantedMs);
  const index = course.filter((key) => key.atMilliseconds < atMilliseconds).length;
  const easing = course[index - 1]?.easing ?? 'linear';
  return { edit: { kind: 'add-key', ...address, key: { atMilliseconds, value, easing } }, index };
}
