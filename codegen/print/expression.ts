/** C++ text with its precedence, so that parentheses stand only where they are needed. */
import type { IntType } from '../../engine/fixed/integers.ts';

/** Larger binds tighter. Shifts, comparisons and logic ask for brackets around each other, as compilers warn. */
export const precedence = {
  choice: 1,
  logic: 2,
  compare: 3,
  bits: 4,
  shift: 5,
  sum: 6,
  product: 7,
  unary: 8,
  atom: 9,
};

export interface Expression {
  readonly text: string;
  readonly level: number;
  /** Set where the text is a cast to this type: a second one would say nothing. */
  readonly castTo?: string;
}

export const cppType: Record<IntType, string> = {
  bool: 'bool',
  i16: 'int16_t',
  u16: 'uint16_t',
  i32: 'int32_t',
  u32: 'uint32_t',
};

export const atom = (text: string): Expression => ({ text, level: precedence.atom });

export const call = (name: string, ...args: readonly Expression[]): Expression =>
  atom(`${name}(${args.map(({ text }) => text).join(', ')})`);

/** The text, bracketed if it binds looser than `level` asks. */
export const at = (level: number, { text, level: own }: Expression): string =>
  own >= level ? text : `(${text})`;

/** A left-associative operator: the right side must bind tighter. */
export function infix(level: number, sign: string, a: Expression, b: Expression): Expression {
  return { text: `${at(level, a)} ${sign} ${at(level + 1, b)}`, level };
}

/** `a >> 3`; a sum inside a shift is bracketed although it binds tighter, since readers stumble there. */
export function shift(sign: '<<' | '>>', a: Expression, amount: number): Expression {
  return { text: `${at(precedence.unary, a)} ${sign} ${amount}`, level: precedence.shift };
}

export const cast = (type: string, inner: Expression): Expression =>
  inner.castTo === type
    ? inner
    : { text: `(${type})${at(precedence.unary, inner)}`, level: precedence.unary, castTo: type };

/**
 * A number as a literal that is at least as wide as its type, and never wider than it has to be: C++ takes
 * the first type that holds it, a long on a chip with 16 bit ints. A suffix would make 64 bits of it on a desk,
 * and then products no longer wrap.
 */
export function literal(type: IntType, value: number): Expression {
  switch (type) {
    case 'bool':
      return atom(value === 1 ? 'true' : 'false');
    case 'i16':
      return value === -32768 ? cast('int16_t', atom('-32768')) : signed(value);
    case 'i32':
      return value === -2147483648 ? { text: '-2147483647 - 1', level: precedence.sum } : signed(value);
    case 'u16':
    case 'u32':
      return atom(`${value}u`);
  }
}

const signed = (value: number): Expression =>
  value < 0 ? { text: `${value}`, level: precedence.unary } : atom(`${value}`);
