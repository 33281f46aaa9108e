import { levelToLowp } from '../fixed/gradient.ts';
import { ease } from './easing.ts';

/** A parameter of a clip that changes over the clip's time. */
export interface KeyedParameter {
  readonly name: string;
  /** At least one, each later than the one before. */
  readonly keys: readonly Keyframe[];
  /** Q16.16 bounds: an easing may overshoot, the parameter may not. */
  readonly min: number;
  readonly max: number;
  /** What the value becomes for the pattern: Q16.16 as it is, Q2.14, whole number, or colour level to Q2.14. */
  readonly to: KeyedFormat;
}

export interface Keyframe {
  readonly atMilliseconds: number;
  /** Q16.16; for a colour channel the level 0..255 times 65536. */
  readonly value: number;
  /** 65 entries in 16.16; governs the way to the next key. */
  readonly easing: Int32Array;
}

export type KeyedFormat = 'mediump' | 'lowp' | 'whole' | 'level';

const formats: Record<KeyedFormat, (value: number) => number> = {
  mediump: (value) => value,
  lowp: (value) => value >> 2,
  whole: (value) => value >> 16,
  level: (value) => levelToLowp(value >> 16),
};

/** The parameter at a time of the clip, in the format its pattern reads. */
export function keyedValue(parameter: KeyedParameter, clipMs: number): number {
  const value = easedValue(parameter.keys, clipMs);
  return formats[parameter.to](Math.min(parameter.max, Math.max(parameter.min, value)));
}

/** Q16.16; held before the first and from the last key on. */
function easedValue(keys: readonly Keyframe[], clipMs: number): number {
  const last = lastKeyAt(keys, clipMs);
  const from = keys[Math.max(0, last)]!;
  const to = keys[last + 1];
  if (last < 0 || to === undefined) return from.value;
  const elapsed = clipMs - from.atMilliseconds;
  // Up to 2^25 ms times 2^16: 64 bits on a chip, and exact here, as everything below 2^53 is.
  const x = Math.floor((elapsed * 65536) / (to.atMilliseconds - from.atMilliseconds));
  // Up to 2^31 times 2^19, then a division by a power of two: exact as well.
  return from.value + Math.floor(((to.value - from.value) * ease(from.easing, x)) / 65536);
}

/** Index of the last key at or before this time; -1 before the first. */
function lastKeyAt(keys: readonly Keyframe[], clipMs: number): number {
  let index = keys.length - 1;
  while (index >= 0 && keys[index]!.atMilliseconds > clipMs) index--;
  return index;
}
