/**
 * Values while a pattern is lowered: vectors fall apart into scalars, and each scalar knows its format.
 *
 * A real number also remembers in `form` how it came about, so that `fract` and `sin` can be computed
 * modulo one turn from the parts, where a sum or product may grow beyond every format unharmed.
 */
import type { IntType, Range } from '../../fixed/integers.ts';
import type { Node } from '../ir.ts';
import type { Precision } from '../parse/words.ts';

/** Q2.14, Q16.16, and UQ0.16 for 0 <= x < 1. */
export type Format = 'lowp' | 'mediump' | 'phase';

export const formats: Record<Format, { readonly type: IntType; readonly fraction: number }> = {
  lowp: { type: 'i16', fraction: 14 },
  mediump: { type: 'i32', fraction: 16 },
  phase: { type: 'u16', fraction: 16 },
};

export type Form =
  | {
      readonly kind: 'sum';
      readonly a: Real;
      readonly b: Real;
      readonly sign: 1 | -1;
      readonly parts: number;
    }
  | { readonly kind: 'scaled'; readonly base: Real; readonly factor: number }
  | { readonly kind: 'product'; readonly a: Real; readonly b: Real }
  /** The given `along`: index / count. */
  | { readonly kind: 'along' };

/** A sum of more parts is no longer remembered: a running sum in a loop would be walked again at every turn. */
export const mostParts = 32;

/** How many parts a fraction of this value is put together from. */
export function partsOf({ form }: Real): number {
  if (form?.kind === 'sum') return form.parts;
  return form?.kind === 'scaled' ? partsOf(form.base) : 1;
}

export interface Real {
  readonly kind: 'real';
  /** What the source asks for; a number written in the source takes what its partner has. */
  readonly precision: Precision | 'literal';
  readonly format: Format;
  readonly node: Node;
  readonly form?: Form;
  /** The exact value of what is made of numbers in the source alone. */
  readonly exact?: number;
  /** The same value as a whole number, where it is known to be one. */
  readonly whole?: Node;
}

/** int, held in i16 where its range allows, else in i32. */
export interface Whole {
  readonly kind: 'whole';
  readonly node: Node;
}

export interface Truth {
  readonly kind: 'truth';
  readonly node: Node;
}

export type Scalar = Real | Whole | Truth;
/** One to three scalars. */
export type Value = readonly Scalar[];

/** Bounds with so many fraction bits. A number of the source is rounded anew for each format. */
export const rangeAt = (value: Real, fraction: number): Range => {
  if (value.exact !== undefined) {
    const raw = Math.round(value.exact * 2 ** fraction);
    return { min: raw, max: raw };
  }
  const shift = fraction - formats[value.format].fraction;
  return { min: Math.floor(value.node.min * 2 ** shift), max: Math.floor(value.node.max * 2 ** shift) };
};

export function finerOf(a: Real['precision'], b: Real['precision']): Real['precision'] {
  if (a === 'literal') return b;
  if (b === 'literal') return a;
  return a === 'mediump' || b === 'mediump' ? 'mediump' : 'lowp';
}
