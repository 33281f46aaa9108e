/**
 * floor(a * b / 2^shift) in C++: which spelling holds every intermediate result, and costs the least on a
 * chip whose ints have 16 bits. The ranges of the operands decide.
 */

import type { IntType } from '../../engine/fixed/integers.ts';
import type { Node, NodeOf } from '../../engine/pattern/ir.ts';
import { fits, mulRange } from '../../engine/pattern/range.ts';
import type { HelperName } from '../kernels/kernels.ts';
import {
  atom,
  call,
  cast,
  cppType,
  type Expression,
  infix,
  literal,
  precedence,
  shift as shifted,
} from './expression.ts';

type Use = (helper: HelperName) => string;

const isShort = (type: string) => type === 'i16' || type === 'u16';

export function multiply(node: NodeOf<'mul'>, a: Expression, b: Expression, use: Use): Expression {
  const { shift, type } = node;
  const [typeA, typeB] = [node.a.type, node.b.type];
  const result = cppType[type];
  const whole = mulRange(node.a, node.b, 0);
  const down = (product: Expression, by: number) => (by === 0 ? product : shifted('>>', product, by));
  const as = (wanted: IntType, factor: Node, text: Expression): Expression => {
    if (factor.op === 'const' && fits(factor, wanted)) return literal(wanted, factor.value);
    return factor.type === wanted ? text : cast(cppType[wanted], text);
  };
  const factors = (wanted: IntType): [Expression, Expression] => [
    as(wanted, node.a, a),
    as(wanted, node.b, b),
  ];
  const product = (wanted: IntType) => infix(precedence.product, '*', ...factors(wanted));
  const longHigh = () => call(use('mul_q16'), ...factors('i32'));

  if (isShort(typeA) && isShort(typeB)) {
    // Small enough for an int of 16 bits.
    const fitsShort = [node.a, node.b, whole].every((range) => fits(range, 'i16'));
    if (fitsShort && (shift < 4 || shift === 8))
      return cast(
        result,
        down(infix(precedence.product, '*', cast('int16_t', a), cast('int16_t', b)), shift),
      );
    const raised = raisedFactor(node);
    if (raised !== undefined)
      return multiply(raised, a, literal(raised.b.type, (raised.b as NodeOf<'const'>).value), use);
    if (shift === 14 && typeA === 'i16' && typeB === 'i16' && type === 'i16')
      return call(use('mul_q14'), a, b);
    if (shift >= 16 && typeA === 'u16' && typeB === 'u16') {
      return asType(type, 'u16', down(call(use('mul_high'), a, b), shift - 16));
    }
    if (shift >= 16 && fits(whole, 'i32')) {
      const high = shifted('>>', product('i32'), 16);
      return cast(result, down(shift === 16 ? high : cast('int16_t', high), shift - 16));
    }
    if (fits(whole, 'i32')) return asType(type, 'i32', down(product('i32'), shift));
    if (fits(whole, 'u32')) return asType(type, 'u32', down(product('u32'), shift));
  }
  // What is kept lies in the low 32 bits of the product, which no overflow touches.
  const keptBits = isShort(type) ? 16 : 32;
  if (shift + keptBits <= 32) return asType(type, 'u32', down(product('u32'), shift));
  const fitsLong = fits(node.a, 'i32') && fits(node.b, 'i32');
  if (fitsLong && fits(whole, 'i32')) return asType(type, 'i32', down(product('i32'), shift));
  if (fitsLong && shift === 16) return asType(type, 'i32', longHigh());
  if (fitsLong && shift < 16) {
    const [wide, narrow, factor] = isShort(typeB)
      ? [as('i32', node.a, a), b, node.b]
      : [as('i32', node.b, b), a, node.a];
    const up = 16 - shift;
    if (fits({ min: factor.min * 2 ** up, max: factor.max * 2 ** up }, 'i32')) {
      const raised =
        factor.op === 'const'
          ? literal('i32', factor.value * 2 ** up)
          : infix(precedence.product, '*', cast('int32_t', narrow), atom(`${2 ** up}`));
      return asType(type, 'i32', call(use('mul_q16'), wide, raised));
    }
  }
  const high16 = mulRange(node.a, node.b, 16);
  if (fitsLong && shift > 16 && (fits(high16, 'i32') || (isShort(type) && shift <= 32))) {
    const high = longHigh();
    return asType(type, 'i32', down(high, shift - 16));
  }
  const wide = whole.max < 2 ** 63 ? 'int64_t' : 'uint64_t';
  const [wideA, wideB] = [cast(wide, a), cast(wide, b)];
  return cast(result, down(infix(precedence.product, '*', wideA, wideB), shift));
}

/**
 * A constant factor whose trailing zeros went into the shift, with as many of them back as make the shift
 * one that takes whole bytes: the helpers for 14 and 16 bits are far smaller on the chip than odd shifts.
 */
function raisedFactor(node: NodeOf<'mul'>): NodeOf<'mul'> | undefined {
  const { a, b, shift, type } = node;
  if (b.op !== 'const' || shift < 9 || shift === 14 || shift >= 16) return undefined;
  const goal = a.type === 'i16' && type === 'i16' && shift < 14 ? 14 : 16;
  const value = b.value * 2 ** (goal - shift);
  const factorType = a.type === 'u16' && value >= 0 ? 'u16' : 'i16';
  if (!fits({ min: value, max: value }, factorType)) return undefined;
  return { ...node, shift: goal, b: { ...b, type: factorType, value, min: value, max: value } };
}

/** Leaves out a cast to the type that the expression has already. */
function asType(
  wanted: NodeOf<'mul'>['type'],
  has: NodeOf<'mul'>['type'],
  expression: Expression,
): Expression {
  // A 16 bit operand of >> is an int by then.
  const isThere = wanted === has && (has === 'i32' || has === 'u32' || expression.level === precedence.atom);
  return isThere ? expression : cast(cppType[wanted], expression);
}
