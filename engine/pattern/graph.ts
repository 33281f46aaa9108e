/**
 * Builds the graph. Equal operations become one node, constants fold in target arithmetic, and what
 * the ranges decide is left out; every rewriting keeps the bits.
 */
import { type IntType, isPowerOfTwo, type Range, rangeOf, wrap } from '../fixed/integers.ts';
import { type KernelName, kernels } from '../fixed/kernels.ts';
import { operate } from './evaluate.ts';
import {
  type InputName,
  type Node,
  type NodeOf,
  type Operation,
  operandsOf,
  type Rate,
  rates,
  type ZoneField,
} from './ir.ts';
import * as range from './range.ts';

const noInputs = { input: () => 0 };

/** Bounds of the work that a hostile source can cause: a pattern of the largest size needs a third of them. */
const mostNodes = 100_000;
const mostRequests = 400_000;

/** Thrown by a graph that has grown beyond any pattern's budget; the lowering turns it into a diagnostic. */
export class GraphTooLarge extends Error {}

export class Graph {
  private readonly known = new Map<string, Node>();
  private readonly ids = new Map<Node, number>();

  private requests = 0;

  constant(type: IntType, value: number): Node {
    const wrapped = wrap[type](value);
    return this.intern(type, { op: 'const', value: wrapped }, range.constantRange(wrapped), 'constant');
  }

  input(input: InputName, type: IntType, bounds: Range): Node {
    const rate = input === 'time' || input === 'turn' ? 'frame' : 'pixel';
    return this.intern(type, { op: 'input', input }, bounds, rate);
  }

  zone(field: ZoneField, bounds: Range): Node {
    return this.intern(field === 'inverse' ? 'u32' : 'u16', { op: 'zone', field }, bounds, 'constant');
  }

  parameter(slot: number, type: IntType, bounds: Range): Node {
    return this.intern(type, { op: 'parameter', slot }, bounds, 'frame');
  }

  keyed(slot: number, type: IntType, bounds: Range): Node {
    return this.intern(type, { op: 'keyed', slot }, bounds, 'frame');
  }

  add(type: IntType, a: Node, b: Node): Node {
    if (isConstant(a, 0)) return this.cast(type, b);
    if (isConstant(b, 0)) return this.cast(type, a);
    if (a.op === 'const' && b.op !== 'const') return this.add(type, b, a);
    // Modulo the type's size, (x + c) + d is x + (c + d).
    if (b.op === 'const' && a.op === 'add' && a.type === type && a.b.op === 'const') {
      return this.add(type, a.a, this.constant(type, a.b.value + b.value));
    }
    if (b.op === 'const' && a.op === 'sub' && a.type === type && a.b.op === 'const') {
      return this.add(type, a.a, this.constant(type, b.value - a.b.value));
    }
    if (isNegative(b, type) && a.type === type) return this.sub(type, a, this.constant(type, -b.value));
    return this.make(type, { op: 'add', a, b }, range.addRange(a, b));
  }

  sub(type: IntType, a: Node, b: Node): Node {
    if (isConstant(b, 0)) return this.cast(type, a);
    if (a === b) return this.constant(type, 0);
    // Modulo the type's size, a - (a - c) is c, and (a + c) - a is c.
    if (b.op === 'sub' && b.a === a && b.type === type && range.fits(b.b, type)) return this.cast(type, b.b);
    if (a.op === 'add' && a.a === b && a.type === type && range.fits(a.b, type)) return this.cast(type, a.b);
    if (isNegative(b, type) && a.type === type) return this.add(type, a, this.constant(type, -b.value));
    return this.make(type, { op: 'sub', a, b }, range.subRange(a, b));
  }

  /** A constant factor gives up its trailing zeros to the shift: floor(a * c 2^z / 2^s) = floor(a * c / 2^(s-z)). */
  mul(type: IntType, a: Node, b: Node, shift: number): Node {
    if (a.op === 'const' && b.op !== 'const') return this.mul(type, b, a, shift);
    if (b.op === 'const' && a.op !== 'const') {
      if (b.value === 0) return this.constant(type, 0);
      const zeros = Math.min(shift, trailingZeros(b.value));
      const factor = b.value / 2 ** zeros;
      const rest = shift - zeros;
      if (factor === 1) return this.shr(type, a, rest);
      if (rest === 0 && isPowerOfTwo(factor)) return this.shl(type, a, Math.log2(factor));
      const narrow = this.constant(narrowestType(factor), factor);
      if (narrow !== b || rest !== shift) return this.mul(type, a, narrow, rest);
    }
    if (isPlainShift(b, shift)) return this.mul(type, a, b.a, shift - b.shift);
    if (isPlainShift(a, shift)) return this.mul(type, a.a, b, shift - a.shift);
    return this.make(type, { op: 'mul', a, b, shift }, range.mulRange(a, b, shift));
  }

  shl(type: IntType, a: Node, shift: number): Node {
    if (shift === 0) return this.cast(type, a);
    if (shift >= bits[type]) return this.constant(type, 0);
    return this.make(type, { op: 'shl', a, shift }, range.shlRange(a, shift));
  }

  shr(type: IntType, a: Node, shift: number): Node {
    if (shift === 0) return this.cast(type, a);
    if (a.op === 'shr' && range.fits(range.shrRange(a.a, a.shift), a.type))
      return this.shr(type, a.a, a.shift + shift);
    if (a.min >= 0 && a.max < 2 ** shift) return this.constant(type, 0);
    // All that is left of a number then is its sign; a processor's shift takes no larger amount.
    if (shift >= bits[a.type]) return this.shr(type, a, bits[a.type] - 1);
    return this.make(type, { op: 'shr', a, shift }, range.shrRange(a, shift));
  }

  cast(type: IntType, a: Node): Node {
    if (a.type === type) return a;
    if (
      a.op === 'cast' &&
      (range.fits(a.a, a.type) || range.fits(rangeOf[type], a.type) || isNarrower(type, a.type))
    ) {
      return this.cast(type, a.a);
    }
    return this.make(type, { op: 'cast', a }, a);
  }

  min(type: IntType, a: Node, b: Node): Node {
    if (a === b || a.max <= b.min) return this.cast(type, a);
    if (b.max <= a.min) return this.cast(type, b);
    return this.make(type, { op: 'min', a, b }, range.minRange(a, b));
  }

  max(type: IntType, a: Node, b: Node): Node {
    if (a === b || a.min >= b.max) return this.cast(type, a);
    if (b.min >= a.max) return this.cast(type, b);
    return this.make(type, { op: 'max', a, b }, range.maxRange(a, b));
  }

  div(type: IntType, a: Node, b: Node, shift: number): Node {
    return this.make(type, { op: 'div', a, b, shift }, range.divRange(a, b, shift));
  }

  rem(type: IntType, a: Node, b: Node): Node {
    return this.make(type, { op: 'rem', a, b }, range.remRange(a, b));
  }

  mod(type: IntType, a: Node, b: Node): Node {
    if (b.op === 'const' && b.value > 0 && a.min >= 0 && a.max < b.value) return this.cast(type, a);
    return this.make(type, { op: 'mod', a, b }, range.modRange(a, b));
  }

  less(a: Node, b: Node): Node {
    if (a.max < b.min) return this.constant('bool', 1);
    if (a === b || a.min >= b.max) return this.constant('bool', 0);
    // b - c < b for what is above 0 and does not wrap.
    const isBelow =
      a.op === 'sub' && a.a === b && a.b.min > 0 && range.fits(range.subRange(a.a, a.b), a.type);
    if (isBelow) return this.constant('bool', 1);
    return this.make('bool', { op: 'less', a, b }, rangeOf.bool);
  }

  lessEqual(a: Node, b: Node): Node {
    if (a === b || a.max <= b.min) return this.constant('bool', 1);
    if (a.min > b.max) return this.constant('bool', 0);
    return this.make('bool', { op: 'lessEqual', a, b }, rangeOf.bool);
  }

  equal(a: Node, b: Node): Node {
    if (a === b) return this.constant('bool', 1);
    if (a.max < b.min || b.max < a.min) return this.constant('bool', 0);
    return this.make('bool', { op: 'equal', a, b }, rangeOf.bool);
  }

  and(a: Node, b: Node): Node {
    if (isConstant(a, 0) || isConstant(b, 1) || a === b) return a;
    if (isConstant(b, 0) || isConstant(a, 1)) return b;
    return this.make('bool', { op: 'and', a, b }, rangeOf.bool);
  }

  or(a: Node, b: Node): Node {
    if (isConstant(a, 1) || isConstant(b, 0) || a === b) return a;
    if (isConstant(b, 1) || isConstant(a, 0)) return b;
    return this.make('bool', { op: 'or', a, b }, rangeOf.bool);
  }

  not(a: Node): Node {
    if (a.op === 'not') return a.a;
    if (a.op === 'less') return this.lessEqual(a.b, a.a);
    if (a.op === 'lessEqual') return this.less(a.b, a.a);
    return this.make('bool', { op: 'not', a }, rangeOf.bool);
  }

  select(type: IntType, condition: Node, a: Node, b: Node): Node {
    if (condition.op === 'const') return this.cast(type, condition.value === 1 ? a : b);
    if (a === b) return this.cast(type, a);
    if (condition.op === 'not') return this.select(type, condition.a, b, a);
    return this.make(type, { op: 'select', condition, a, b }, range.hull(a, b));
  }

  call(kernel: KernelName, args: readonly Node[]): Node {
    const { takes, gives, range: bounds } = kernels[kernel];
    const cast = args.map((arg, i) => this.cast(takes[i]!, arg));
    return this.make(gives, { op: 'call', kernel, args: cast }, bounds(...cast));
  }

  /** One channel of a gradient at Q2.14 position `at`, which lies within 0..16384. */
  gradient(gradient: number, channel: number, at: Node): Node {
    const segment = this.make('i16', { op: 'gradientSegment', gradient, a: at }, { min: 0, max: 31 });
    const part = this.make('i16', { op: 'gradientPart', gradient, a: at, segment }, { min: 0, max: 16384 });
    return this.make(
      'i16',
      { op: 'gradientColour', gradient, channel, segment, part },
      { min: 0, max: 16384 },
    );
  }

  /** The same operation with bounds that a closer argument has proved. */
  bounded(node: Node, bounds: Range): Node {
    const min = Math.max(node.min, bounds.min);
    const max = Math.min(node.max, bounds.max);
    if ((min === node.min && max === node.max) || node.op === 'const') return node;
    return this.intern(node.type, node, { min, max }, node.rate);
  }

  /** The same operation on other operands: how a pattern is specialised. Its bounds stay proved. */
  rebuild(node: Node, operands: readonly Node[]): Node {
    return this.bounded(this.rebuilt(node, operands), node);
  }

  private rebuilt(node: Node, operands: readonly Node[]): Node {
    const [a, b, c] = operands as [Node, Node, Node];
    switch (node.op) {
      case 'const':
        return this.constant(node.type, node.value);
      case 'input':
        return this.input(node.input, node.type, node);
      case 'zone':
        return this.zone(node.field, node);
      case 'parameter':
        return this.parameter(node.slot, node.type, node);
      case 'keyed':
        return this.keyed(node.slot, node.type, node);
      case 'mul':
        return this.mul(node.type, a, b, node.shift);
      case 'div':
        return this.div(node.type, a, b, node.shift);
      case 'shl':
      case 'shr':
        return this[node.op](node.type, a, node.shift);
      case 'cast':
        return this.cast(node.type, a);
      case 'less':
      case 'lessEqual':
      case 'equal':
      case 'and':
      case 'or':
        return this[node.op](a, b);
      case 'not':
        return this.not(a);
      case 'select':
        return this.select(node.type, a, b, c);
      case 'call':
        return this.call(node.kernel, operands);
      case 'gradientSegment':
        return this.make(node.type, { ...node, a }, node);
      case 'gradientPart':
        return this.make(node.type, { ...node, a, segment: b }, node);
      case 'gradientColour':
        return this.make(node.type, { ...node, segment: a, part: b }, node);
      default:
        return this[node.op](node.type, a, b);
    }
  }

  /** Folds where all operands are constants, else interns with the range wrapped to the type. */
  private make(type: IntType, operation: Operation, exactRange: Range): Node {
    const operands = operandsOf(operation as Node);
    const node = { type, ...operation } as Node;
    if (!operation.op.startsWith('gradient') && operands.every((operand) => operand.op === 'const')) {
      const values = operands.map((operand) => (operand as { value: number }).value);
      return this.constant(type, operate(node, values, noInputs));
    }
    return this.intern(type, operation, range.wrapped(exactRange, type), slowest(operands));
  }

  private intern(type: IntType, operation: Operation, { min, max }: Range, rate: Rate): Node {
    if (++this.requests > mostRequests) throw new GraphTooLarge();
    const key = `${this.keyOf(type, operation)} ${min} ${max}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    if (this.known.size >= mostNodes) throw new GraphTooLarge();
    const node = { ...operation, type, min, max, rate } as Node;
    this.known.set(key, node);
    this.ids.set(node, this.ids.size);
    return node;
  }

  private keyOf(type: IntType, operation: Operation): string {
    let key = `${operation.op} ${type} ${detailsOf(operation)}`;
    for (const operand of operandsOf(operation as Node)) key += ` ${this.ids.get(operand)}`;
    return key;
  }
}

/** What tells two operations of one kind apart beside their operands. */
function detailsOf(operation: Operation): string {
  switch (operation.op) {
    case 'const':
      return String(operation.value);
    case 'input':
      return operation.input;
    case 'zone':
      return operation.field;
    case 'parameter':
    case 'keyed':
      return String(operation.slot);
    case 'mul':
    case 'div':
    case 'shl':
    case 'shr':
      return String(operation.shift);
    case 'call':
      return operation.kernel;
    case 'gradientSegment':
    case 'gradientPart':
      return String(operation.gradient);
    case 'gradientColour':
      return `${operation.gradient}.${operation.channel}`;
    default:
      return '';
  }
}

function slowest(operands: readonly Node[]): Rate {
  return rates[Math.max(0, ...operands.map(({ rate }) => rates.indexOf(rate)))]!;
}

export function isConstant(node: Node, value: number): boolean {
  return node.op === 'const' && node.value === value;
}

/** A constant below 0 whose opposite the type holds: the most negative number has none. */
function isNegative(node: Node, type: IntType): node is NodeOf<'const'> {
  return node.op === 'const' && node.value < 0 && -node.value <= rangeOf[type].max;
}

/** A factor that was only moved up, without loss, by bits that the product moves down again. */
function isPlainShift(node: Node, shift: number): node is NodeOf<'shl'> {
  return (
    node.op === 'shl' && node.shift <= shift && range.fits(range.shlRange(node.a, node.shift), node.type)
  );
}

/** The narrowest type that holds a constant. */
export function narrowestType(value: number): IntType {
  return (['i16', 'u16', 'i32', 'u32'] as const).find(
    (type) => value >= rangeOf[type].min && value <= rangeOf[type].max,
  )!;
}

function trailingZeros(value: number): number {
  const low = value | 0;
  return low === 0 ? 31 : 31 - Math.clz32(low & -low);
}

const bits: Record<IntType, number> = { bool: 1, i16: 16, u16: 16, i32: 32, u32: 32 };
const isNarrower = (a: IntType, b: IntType) => bits[a] <= bits[b] && a !== 'bool' && b !== 'bool';
