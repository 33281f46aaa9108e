/** A parameter's way through the time of its clip, from keyframe to keyframe. */
import { findLibraryPattern } from '../../pattern/library.ts';
import type { Clip, ParameterDescription, ParameterValue, Piece } from '../../piece/schema.ts';
import type { Key } from '../kinds/keys.ts';

/** At least one key, in order of time. */
export type Course = readonly Key[];

/** The keys of a parameter that moves over time; undefined for one that stands still. */
export function courseOf(value: ParameterValue | undefined): Course | undefined {
  return typeof value === 'object' && !Array.isArray(value) ? value.keys : undefined;
}

/** Whether all keys hold numbers, or all colours, is for the schema to say. */
export function valueOfCourse(course: Course): ParameterValue {
  return { keys: [...course] } as ParameterValue;
}

/** What the clip's pattern says of a parameter. */
export function descriptionOf(piece: Piece, clip: Clip, parameter: string): ParameterDescription | undefined {
  const pattern =
    findLibraryPattern(clip.pattern) ?? piece.patterns.find(({ name }) => name === clip.pattern);
  return pattern?.parameters.find(({ name }) => name === parameter);
}
