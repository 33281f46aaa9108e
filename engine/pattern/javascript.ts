/**
 * The graph as JavaScript, specialised for one clip. Every value is a whole number that V8 can hold in
 * 32 bits; wraps that the ranges prove idle are left out.
 */
import { floorModulo, multiply } from '../fixed/arithmetic.ts';
import { gradientColour, gradientPart, gradientSegment } from '../fixed/gradient.ts';
import { type IntType, isPowerOfTwo, type Range } from '../fixed/integers.ts';
import { kernelNames, kernels } from '../fixed/kernels.ts';
import { fillPixels } from './fill.ts';
import { type InputName, inOrder, type Node, type NodeOf, type Op } from './ir.ts';
import type { ClipProgram } from './program.ts';
import { addRange, fits, mulRange, shlRange, shrRange, subRange } from './range.ts';
import { schedule } from './schedule.ts';

/**
 * Writes three levels for each entry of a zone, in the zone's order.
 * @param indices index in the zone of each entry
 * @param places Q2.14, x and y of each entry
 * @param time Q16.16 seconds since the clip began
 * @param turn Q2.14 through the clip
 * @param keyed values of the keyframed parameters, by slot
 */
export type DrawProgram = (
  out: Uint8Array,
  indices: Uint16Array,
  places: Int16Array,
  time: number,
  turn: number,
  keyed: Int32Array,
) => void;

type Emit = (node: Node) => string;

/** Brings an int32 expression, or a double that is a whole number, to a type. */
const wrapText: Record<IntType, (text: string) => string> = {
  bool: (text) => text,
  i16: (text) => `(${text} << 16 >> 16)`,
  u16: (text) => `(${text} & 65535)`,
  i32: (text) => `(${text} | 0)`,
  u32: (text) => `(${text} >>> 0)`,
};

/** Wraps if it must; else only tells V8 that the sum is whole. */
function settle(type: IntType, exact: Range, text: string): string {
  if (!fits(exact, type)) return wrapText[type](text);
  return type === 'u32' ? `(${text} >>> 0)` : `(${text} | 0)`;
}

const fitsIn32 = (range: Range) => fits(range, 'i32');

/** floor(a * b / 2^shift): the cheapest spelling whose intermediate results the ranges allow. */
function product(node: NodeOf<'mul'>, a: string, b: string): string {
  const { shift, type } = node;
  const whole = mulRange(node.a, node.b, 0);
  const exact = mulRange(node.a, node.b, shift);
  const down = (text: string, sign: '>>' | '>>>') => (shift === 0 ? text : `(${text} ${sign} ${shift})`);
  if (fitsIn32(whole)) return settle(type, exact, down(`Math.imul(${a}, ${b})`, '>>'));
  if (fits(whole, 'u32')) return settle(type, exact, down(`Math.imul(${a}, ${b})`, '>>>'));
  if (shift === 0) return wrapText[type](`Math.imul(${a}, ${b})`);
  const bothSigned = fitsIn32(node.a) && fitsIn32(node.b);
  if (shift === 16 && bothSigned) {
    const high = `Math.imul(${a} >> 16, ${b})`;
    const middle = `Math.imul(${a} & 65535, ${b} >> 16)`;
    const low = `(Math.imul(${a} & 65535, ${b} & 65535) >>> 16)`;
    return wrapText[type](`(${high} + ${middle} + ${low})`);
  }
  if (Math.max(Math.abs(whole.min), whole.max) < 2 ** 53) {
    const floored = `Math.floor(${a} * ${b} / ${2 ** shift})`;
    return settle(type, exact, floored);
  }
  return wrapText[type](`multiply(${a}, ${b}, ${shift})`);
}

const emitters: { readonly [O in Op]: (node: NodeOf<O>, emit: Emit) => string } = {
  const: ({ type, value }) =>
    type === 'bool' ? String(value === 1) : value < 0 ? `(${value})` : String(value),
  input: ({ input }) => input,
  zone: ({ field }) => unspecialised(field),
  parameter: ({ slot }) => unspecialised(`parameter ${slot}`),
  keyed: ({ slot }) => `keyed[${slot}]`,
  add: ({ a, b, type }, emit) => settle(type, addRange(a, b), `(${emit(a)} + ${emit(b)})`),
  sub: ({ a, b, type }, emit) => settle(type, subRange(a, b), `(${emit(a)} - ${emit(b)})`),
  mul: (node, emit) => product(node, emit(node.a), emit(node.b)),
  shl: ({ a, shift, type }, emit) => settle(type, shlRange(a, shift), `(${emit(a)} << ${shift})`),
  shr: ({ a, shift, type }, emit) => {
    const text = `(${emit(a)} ${a.type === 'u32' ? '>>>' : '>>'} ${shift})`;
    return fits(shrRange(a, shift), type) ? text : wrapText[type](text);
  },
  cast: ({ a, type }, emit) => (fits(a, type) ? emit(a) : wrapText[type](emit(a))),
  min: ({ a, b }, emit) => `Math.min(${emit(a)}, ${emit(b)})`,
  max: ({ a, b }, emit) => `Math.max(${emit(a)}, ${emit(b)})`,
  // Truncation and the wrap to 32 bits are what | 0 does; a division by 0 gives 0 by the same rule.
  div: ({ a, b, shift, type }, emit) => {
    const quotient = `(${emit(a)} * ${2 ** shift} / ${emit(b)} | 0)`;
    return type === 'i32' ? quotient : wrapText[type](quotient);
  },
  // Where no sign has to be kept, V8 need not ask for one.
  rem: ({ a, b }, emit) =>
    a.min >= 0 && b.min > 0 ? `((${emit(a)} >>> 0) % ${emit(b)} | 0)` : `(${emit(a)} % ${emit(b)} | 0)`,
  mod: ({ a, b }, emit) =>
    b.op === 'const' && isPowerOfTwo(b.value)
      ? `(${emit(a)} & ${b.value - 1})`
      : `floorModulo(${emit(a)}, ${emit(b)})`,
  less: ({ a, b }, emit) => `(${emit(a)} < ${emit(b)})`,
  lessEqual: ({ a, b }, emit) => `(${emit(a)} <= ${emit(b)})`,
  equal: ({ a, b }, emit) => `(${emit(a)} === ${emit(b)})`,
  and: ({ a, b }, emit) => `(${emit(a)} && ${emit(b)})`,
  or: ({ a, b }, emit) => `(${emit(a)} || ${emit(b)})`,
  not: ({ a }, emit) => `!${emit(a)}`,
  select: ({ condition, a, b }, emit) => `(${emit(condition)} ? ${emit(a)} : ${emit(b)})`,
  call: ({ kernel, args }, emit) => `${kernel}(${args.map(emit).join(', ')})`,
  gradientSegment: ({ gradient, a }, emit) => `gradientSegment(gradients[${gradient}], ${emit(a)})`,
  gradientPart: ({ gradient, a, segment }, emit) =>
    `gradientPart(gradients[${gradient}], ${emit(a)}, ${emit(segment)})`,
  gradientColour: ({ gradient, channel, segment, part }, emit) =>
    `gradientColour(gradients[${gradient}], ${channel}, ${emit(segment)}, ${emit(part)})`,
};

function unspecialised(what: string): never {
  throw new Error(`a clip's program still asks for its ${what}`);
}

/** Inputs that are read anew for every pixel, if the pattern looks at them at all. */
const pixelInputs: Partial<Record<InputName, string>> = {
  index: 'const index = indices[at];',
  placeX: 'const placeX = places[at * 2];',
  placeY: 'const placeY = places[at * 2 + 1];',
};

/** The body of a DrawProgram. */
export function printJavaScript({ levels }: ClipProgram): string {
  const { frame, pixel } = schedule(levels, { nesting: 12 });
  const names = new Map<Node, string>();
  const emit: Emit = (node) => names.get(node) ?? emitHere(node);
  const emitHere: Emit = (node) => (emitters[node.op] as (node: Node, emit: Emit) => string)(node, emit);
  const declare = (node: Node) => {
    const line = `const v${names.size} = ${emitHere(node)};`;
    names.set(node, `v${names.size}`);
    return line;
  };
  const declarations = frame.map(declare);
  if (levels.every((level) => level.rate !== 'pixel')) {
    return [...declarations, `fillPixels(out, ${levels.map(emit).join(', ')});`].join('\n');
  }
  const inputs = new Set(inOrder(levels).flatMap((node) => (node.op === 'input' ? [node.input] : [])));
  return [
    ...declarations,
    'const end = indices.length;',
    'for (let at = 0, to = 0; at < end; at++, to += 3) {',
    ...[...inputs].map((input) => pixelInputs[input] ?? ''),
    ...pixel.map(declare),
    ...levels.map((level, channel) => `out[to + ${channel}] = ${emit(level)};`),
    '}',
  ].join('\n');
}

/** Compiles a program with `new Function`: to be called where generated code may run, a worker in the page. */
export function compileProgram(program: ClipProgram): DrawProgram {
  const library = {
    ...Object.fromEntries(kernelNames.map((name) => [name, kernels[name].evaluate])),
    multiply,
    floorModulo,
    gradientSegment,
    gradientPart,
    gradientColour,
    fillPixels,
    gradients: program.gradients,
  };
  const body = `return function draw(out, indices, places, time, turn, keyed) {\n${printJavaScript(program)}\n};`;
  const make = new Function(...Object.keys(library), body) as (...parts: unknown[]) => DrawProgram;
  return make(...Object.values(library));
}
