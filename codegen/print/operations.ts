/** Each operation of the graph as a C++ expression of exactly its type. One record entry an operation. */
import { type IntType, isPowerOfTwo } from '../../engine/fixed/integers.ts';
import type { InputName, Node, NodeOf, Op } from '../../engine/pattern/ir.ts';
import { addRange, fits, shlRange, subRange } from '../../engine/pattern/range.ts';
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
import { multiply } from './multiply.ts';

export interface Context {
  readonly emit: (node: Node) => Expression;
  /** Asks for a helper function and gives its name in C++. */
  readonly use: (helper: HelperName) => string;
  readonly keyed: (slot: number) => string;
  /** Identifiers of a gradient's tables, and its number of segments. */
  readonly gradient: (number: number) => {
    position: string;
    inverse: string;
    colour: string;
    segments: number;
  };
}

const unsignedOf: Record<IntType, string> = {
  bool: 'bool',
  i16: 'uint16_t',
  u16: 'uint16_t',
  i32: 'uint32_t',
  u32: 'uint32_t',
};

const inputNames: Record<InputName, string> = {
  time: 'time',
  turn: 'turn',
  index: 'index',
  placeX: 'place_x',
  placeY: 'place_y',
};

/** An operand as a value of another type; a constant is simply written in it. */
function as(type: IntType, node: Node, { emit }: Context): Expression {
  if (node.type === type) return emit(node);
  return node.op === 'const' && fits(node, type)
    ? literal(type, node.value)
    : cast(cppType[type], emit(node));
}

/** A sum or difference: plain where the ranges prove that it fits, else in unsigned arithmetic, which wraps. */
function sum(sign: '+' | '-', node: NodeOf<'add'> | NodeOf<'sub'>, context: Context): Expression {
  const { a, b, type } = node;
  const exact = sign === '+' ? addRange(a, b) : subRange(a, b);
  if (fits(exact, type) && (type === 'i32' || type === 'i16')) {
    const plain = infix(precedence.sum, sign, as(type, a, context), as(type, b, context));
    return type === 'i32' ? plain : cast('int16_t', plain);
  }
  const unsigned: IntType = type === 'i16' || type === 'u16' ? 'u16' : 'u32';
  const wrapping = infix(precedence.sum, sign, as(unsigned, a, context), as(unsigned, b, context));
  return type === 'u32' ? wrapping : cast(cppType[type], wrapping);
}

function compare(sign: string, a: Node, b: Node, { emit }: Context): Expression {
  return infix(precedence.compare, sign, emit(a), emit(b));
}

const isPositive = (node: Node) => node.min > 0;

/** Operators serve where the divisor is known to be above 0; else the helpers say what happens at 0 and -1. */
function whole(
  sign: '/' | '%',
  helper: HelperName,
  node: NodeOf<'div'> | NodeOf<'rem'>,
  context: Context,
): Expression {
  const { a, b, type } = node;
  if (isPositive(b) && fits(a, type) && fits(b, type)) {
    const plain = infix(precedence.product, sign, as(type, a, context), as(type, b, context));
    return type === 'i32' || type === 'u32' ? plain : cast(cppType[type], plain);
  }
  return narrowed(type, call(context.use(helper), as('i32', a, context), as('i32', b, context)));
}

/** What helpers give as int32_t, in the type of the node. */
const narrowed = (type: IntType, value: Expression) => (type === 'i32' ? value : cast(cppType[type], value));

type Emitters = { readonly [O in Op]: (node: NodeOf<O>, context: Context) => Expression };

const emitters: Emitters = {
  const: ({ type, value }) => literal(type, value),
  input: ({ input }) => atom(inputNames[input]),
  zone: ({ field }) => unspecialised(field),
  parameter: ({ slot }) => unspecialised(`parameter ${slot}`),
  keyed: ({ slot }, { keyed }) => atom(keyed(slot)),
  add: (node, context) => sum('+', node, context),
  sub: (node, context) => sum('-', node, context),
  mul: (node, { emit, use }) => multiply(node, emit(node.a), emit(node.b), use),
  shl: ({ a, shift, type }, context) => {
    const unsigned = unsignedOf[type];
    const raised = shifted(
      '<<',
      a.type === type && unsigned === cppType[type] ? context.emit(a) : cast(unsigned, context.emit(a)),
      shift,
    );
    // Multiplying is the readable way to move a signed value up, where it fits.
    if ((type === 'i32' || type === 'i16') && fits(shlRange(a, shift), type)) {
      const scaled = infix(precedence.product, '*', as(type, a, context), atom(`${2 ** shift}`));
      return type === 'i32' ? scaled : cast('int16_t', scaled);
    }
    return type === 'u32' ? raised : cast(cppType[type], raised);
  },
  shr: ({ a, shift, type }, { emit }) => {
    const lowered = shifted('>>', emit(a), shift);
    return a.type === type && (type === 'i32' || type === 'u32') ? lowered : cast(cppType[type], lowered);
  },
  cast: ({ a, type }, { emit }) => cast(cppType[type], emit(a)),
  min: ({ a, b, type }, context) =>
    call(`${context.use('smaller')}<${cppType[type]}>`, as(type, a, context), as(type, b, context)),
  max: ({ a, b, type }, context) =>
    call(`${context.use('larger')}<${cppType[type]}>`, as(type, a, context), as(type, b, context)),
  div: (node, context) => {
    const { a, b, shift, type } = node;
    if (shift === 0) return whole('/', 'quotient', node, context);
    return narrowed(
      type,
      call(context.use('ratio_of'), as('i32', a, context), as('i32', b, context), atom(`${shift}`)),
    );
  },
  rem: (node, context) => whole('%', 'remainder_of', node, context),
  mod: ({ a, b, type }, context) => {
    if (b.op === 'const' && isPowerOfTwo(b.value)) {
      const mask = literal(type, b.value - 1);
      return cast(cppType[type], {
        text: `${bracketed(context.emit(a))} & ${mask.text}`,
        level: precedence.bits,
      });
    }
    return narrowed(type, call(context.use('floor_mod'), as('i32', a, context), as('i32', b, context)));
  },
  less: ({ a, b }, context) => compare('<', a, b, context),
  lessEqual: ({ a, b }, context) => compare('<=', a, b, context),
  equal: ({ a, b }, context) => compare('==', a, b, context),
  and: ({ a, b }, { emit }) => logic('&&', emit(a), emit(b)),
  or: ({ a, b }, { emit }) => logic('||', emit(a), emit(b)),
  not: ({ a }, { emit }) => ({ text: `!${bracketed(emit(a))}`, level: precedence.unary }),
  select: ({ condition, a, b, type }, context) => {
    const choice: Expression = {
      text: `${bracketed(context.emit(condition))} ? ${atLeast(as(type, a, context))} : ${atLeast(as(type, b, context))}`,
      level: precedence.choice,
    };
    return type === 'bool' ? choice : cast(cppType[type], choice);
  },
  call: ({ kernel, args }, { emit, use }) => call(use(kernel), ...args.map(emit)),
  gradientSegment: ({ gradient, a }, context) => {
    const { position, segments } = context.gradient(gradient);
    return call(context.use('gradient_segment'), atom(position), atom(String(segments)), context.emit(a));
  },
  gradientPart: ({ gradient, a, segment }, context) => {
    const { position, inverse } = context.gradient(gradient);
    return call(
      context.use('gradient_part'),
      atom(position),
      atom(inverse),
      context.emit(a),
      context.emit(segment),
    );
  },
  gradientColour: ({ gradient, channel, segment, part }, context) => {
    const { colour } = context.gradient(gradient);
    return call(
      context.use('gradient_colour'),
      atom(`${colour} + ${channel}`),
      context.emit(segment),
      context.emit(part),
    );
  },
};

const atLeast = (expression: Expression) =>
  expression.level > precedence.choice ? expression.text : `(${expression.text})`;
const bracketed = (expression: Expression) =>
  expression.level >= precedence.unary ? expression.text : `(${expression.text})`;
const logic = (sign: string, a: Expression, b: Expression): Expression => ({
  text: `${bracketed(a)} ${sign} ${bracketed(b)}`,
  level: precedence.logic,
});

function unspecialised(what: string): never {
  throw new Error(`a clip's program still asks for its ${what}`);
}

export function emitOperation(node: Node, context: Context): Expression {
  return (emitters[node.op] as (node: Node, context: Context) => Expression)(node, context);
}
