/** Integers of a stated width. In JavaScript a value of any of them is an exact number. */
export type IntType = 'bool' | 'i16' | 'u16' | 'i32' | 'u32';

export interface Range {
  readonly min: number;
  readonly max: number;
}

export const rangeOf: Record<IntType, Range> = {
  bool: { min: 0, max: 1 },
  i16: { min: -0x8000, max: 0x7fff },
  u16: { min: 0, max: 0xffff },
  i32: { min: -0x80000000, max: 0x7fffffff },
  u32: { min: 0, max: 0xffffffff },
};

/** Wraps an exact integer (below 2^53 in size) to a type, two's complement. */
export const wrap: Record<IntType, (value: number) => number> = {
  bool: (value) => (value === 0 ? 0 : 1),
  i16: (value) => ((value | 0) << 16) >> 16,
  u16: (value) => value & 0xffff,
  i32: (value) => value | 0,
  u32: (value) => value >>> 0,
};

export const isPowerOfTwo = (value: number): boolean => value > 0 && Number.isInteger(Math.log2(value));
