/**
 * One operation of the graph at a time: every operation, for each combination of types that the lowering
 * makes, with operands at the corners of their ranges. What each must give is told by `exactResult`, in
 * integers of any size, straight from the rules F1 to F5.
 */
import { type IntType, rangeOf, wrap } from '../../engine/fixed/integers.ts';
import { kernelNames, kernels } from '../../engine/fixed/kernels.ts';
import { evaluate } from '../../engine/pattern/evaluate.ts';
import { Graph } from '../../engine/pattern/graph.ts';
import type { Node, Op } from '../../engine/pattern/ir.ts';
import { Chance } from './generate/chance.ts';

/** A value from outside with proved bounds, or a constant. */
export type Operand =
  | { readonly type: IntType; readonly min: number; readonly max: number }
  | { readonly type: IntType; readonly value: number };

export interface OperationCase {
  readonly name: string;
  readonly op: Op;
  readonly type: IntType;
  readonly shift: number;
  readonly operands: readonly Operand[];
  /** The operation as the graph builds it: simplified where the bounds allow. */
  readonly node: Node;
  /** Node of each operand; a constant has none of its own to be filled in. */
  readonly leaves: readonly (Node | undefined)[];
  readonly kernel?: (typeof kernelNames)[number];
}

const bits: Record<IntType, bigint> = { bool: 1n, i16: 16n, u16: 16n, i32: 32n, u32: 32n };

/** Two's complement at the width of a type: rule F1. */
export function wrapExact(type: IntType, value: bigint): number {
  if (type === 'bool') return value === 0n ? 0 : 1;
  return Number(
    type.startsWith('i')
      ? BigInt.asIntN(Number(bits[type]), value)
      : BigInt.asUintN(Number(bits[type]), value),
  );
}

type Exact = (values: bigint[], shift: bigint) => bigint;

/** Quotient rounded down; BigInt division itself cuts towards 0. */
const floorDivide = (a: bigint, b: bigint) => {
  const quotient = a / b;
  return a % b !== 0n && a < 0n !== b < 0n ? quotient - 1n : quotient;
};
const ascending = (values: bigint[]) => [...values].sort((a, b) => Number(a - b));
const truth = (is: boolean) => (is ? 1n : 0n);

/** Before the wrap. Rules F1 to F5. */
export const exactly: Partial<Record<Op, Exact>> = {
  add: ([a, b]) => a! + b!,
  sub: ([a, b]) => a! - b!,
  mul: ([a, b], shift) => floorDivide(a! * b!, 1n << shift),
  shl: ([a], shift) => a! * (1n << shift),
  shr: ([a], shift) => floorDivide(a!, 1n << shift),
  cast: ([a]) => a!,
  min: (values) => ascending(values)[0]!,
  max: (values) => ascending(values).at(-1)!,
  div: ([a, b], shift) => (b === 0n ? 0n : (a! * (1n << shift)) / b!),
  rem: ([a, b]) => (b === 0n ? 0n : a! % b!),
  mod: ([a, b]) => (b === 0n ? 0n : a! - b! * floorDivide(a!, b!)),
  less: ([a, b]) => truth(a! < b!),
  lessEqual: ([a, b]) => truth(a! <= b!),
  equal: ([a, b]) => truth(a! === b!),
  and: ([a, b]) => a! & b!,
  or: ([a, b]) => a! | b!,
  not: ([a]) => 1n - a!,
  select: ([condition, a, b]) => (condition === 1n ? a! : b!),
};

const full = (type: IntType): Operand => ({ type, ...rangeOf[type] });
const within = (type: IntType, min: number, max: number): Operand => ({ type, min, max });
const constant = (type: IntType, value: number): Operand => ({ type, value });

/** How wide the values of an operand may be: what the printers choose their spelling by. */
const widths: Record<Exclude<IntType, 'bool'>, readonly Operand[]> = {
  i16: [
    full('i16'),
    within('i16', 0, 32767),
    within('i16', -16384, 16384),
    within('i16', 0, 16384),
    within('i16', -100, 100),
    within('i16', 1, 2000),
    ...[-32768, -3, -1, 3, 5, 181, 16384, 26214, 32767].map((value) => constant('i16', value)),
  ],
  u16: [
    full('u16'),
    within('u16', 0, 255),
    within('u16', 0, 32768),
    within('u16', 1, 1999),
    ...[3, 255, 32769, 65535].map((value) => constant('u16', value)),
  ],
  i32: [
    full('i32'),
    within('i32', 0, 2123366400),
    within('i32', -65536, 65536),
    within('i32', 0, 65536),
    within('i32', -4000000, 4000000),
    within('i32', 4, 300000),
    ...[-2147483648, -65537, 65537, 19661, 6553601, 2147483647].map((value) => constant('i32', value)),
  ],
  u32: [
    full('u32'),
    within('u32', 0, 2147483648),
    ...[65537, 4294967295].map((value) => constant('u32', value)),
  ],
};

type Number2 = readonly [Exclude<IntType, 'bool'>, Exclude<IntType, 'bool'>];

const pairs = (text: string): Number2[] =>
  text.split(' ').map((pair) => pair.split('-') as unknown as Number2);

/** Types of result and operands that the lowering combines. */
const sums: readonly (readonly [IntType, Number2])[] = [
  ...pairs('i16-i16 i16-i32 i32-i16 i32-i32').map((both) => ['i16', both] as const),
  ...pairs('u16-u16').map((both) => ['u16', both] as const),
  ...pairs('i16-i16 i16-i32 i32-i16 i32-i32').map((both) => ['i32', both] as const),
  ...pairs('u32-u32').map((both) => ['u32', both] as const),
];
const narrowFactors = pairs('i16-i16 i16-u16 i16-i32 u16-i16 u16-u16 u16-i32 i32-i16 i32-u16 i32-i32');
const products: readonly (readonly [IntType, Number2])[] = [
  ...(['i16', 'u16', 'i32', 'u32'] as const).flatMap((type) =>
    narrowFactors.map((both) => [type, both] as const),
  ),
  ...(['i32', 'u32'] as const).flatMap((type) =>
    pairs('u32-i16 u32-u16 u32-i32 u32-u32').map((both) => [type, both] as const),
  ),
];
const productShifts = [0, 1, 2, 3, 4, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 20, 22, 24, 28];
const quotients: readonly (readonly [IntType, Number2])[] = (['i16', 'u16', 'i32'] as const).flatMap((type) =>
  narrowFactors.map((both) => [type, both] as const),
);
const alike: readonly (readonly [IntType, Number2])[] = (['i16', 'u16', 'i32'] as const).map((type) => [
  type,
  [type, type],
]);
const remainders: readonly (readonly [IntType, Number2])[] = [
  ...pairs('i16-i16 i16-i32 i32-i16').map((both) => ['i16', both] as const),
  ...pairs('i32-i32').map((both) => ['i32', both] as const),
];
const casts =
  'i16-i32 i16-u16 i16-u32 i32-i16 i32-u16 i32-u32 u16-i16 u16-i32 u16-u32 u32-i16 u32-i32 u32-u16';

/**
 * @param share part of the combinations that is kept, drawn by the seed: all of them would be tens of
 * thousands. Those with full ranges are always there.
 */
export function operationCases(share: number, seed: number): OperationCase[] {
  const chance = new Chance(seed);
  const cases: OperationCase[] = [];
  const add = (op: Op, type: IntType, shift: number, operands: readonly Operand[]) => {
    const isFull = operands.every(
      (one) => 'min' in one && one.min === rangeOf[one.type].min && one.max === rangeOf[one.type].max,
    );
    if (isFull || chance.flip(share)) cases.push(makeCase(op, type, shift, operands));
  };
  const each = (
    op: Op,
    combinations: readonly (readonly [IntType, Number2])[],
    shifts: readonly number[] = [0],
  ) => {
    for (const [type, [a, b]] of combinations)
      for (const left of widths[a])
        for (const right of widths[b]) {
          if ('value' in left && 'value' in right) continue;
          for (const shift of shifts) add(op, type, shift, [left, right]);
        }
  };
  each('add', sums);
  each('sub', sums);
  each('mul', products, productShifts);
  each('div', quotients, [0, 12, 14, 16, 18]);
  each('rem', remainders);
  each('mod', alike);
  for (const type of ['i16', 'u16', 'i32'] as const)
    for (const value of [1, 2, 64, 4096, 16384])
      for (const a of widths[type]) add('mod', type, 0, [a, constant(type, value)]);
  for (const op of ['min', 'max'] as const) each(op, alike);
  for (const op of ['less', 'lessEqual', 'equal'] as const)
    each(
      op,
      alike.map(([, both]) => ['bool', both] as const),
    );
  for (const op of ['shl', 'shr'] as const)
    for (const [type, [a]] of [...sums, ...pairs(casts).map(([to, from]) => [to, [from, from]] as const)])
      for (const operand of widths[a])
        for (const shift of [1, 2, 6, 7, 8, 13, 14, 15, 16, 17, 24, 30, 31]) add(op, type, shift, [operand]);
  for (const [to, from] of pairs(casts)) for (const operand of widths[from]) add('cast', to, 0, [operand]);
  for (const op of ['and', 'or'] as const) add(op, 'bool', 0, [full('bool'), full('bool')]);
  add('not', 'bool', 0, [full('bool')]);
  for (const [type, [a, b]] of [...alike, ['bool', ['bool', 'bool']] as const])
    for (const left of a === 'bool' ? [full('bool')] : widths[a])
      for (const right of b === 'bool' ? [full('bool')] : widths[b])
        add('select', type, 0, [full('bool'), left, right]);
  for (const kernel of kernelNames) cases.push(kernelCase(kernel));
  return cases;
}

const describeOperand = (operand: Operand) =>
  'value' in operand ? `${operand.value}` : `${operand.type} ${operand.min}..${operand.max}`;

function leavesFor(graph: Graph, operands: readonly Operand[]): [Node[], (Node | undefined)[]] {
  const nodes = operands.map((operand, slot) => {
    const { type } = operand;
    return 'value' in operand ? graph.constant(type, operand.value) : graph.keyed(slot, type, operand);
  });
  return [nodes, operands.map((operand, i) => ('value' in operand ? undefined : nodes[i]!))];
}

function makeCase(op: Op, type: IntType, shift: number, operands: readonly Operand[]): OperationCase {
  const graph = new Graph();
  const [nodes, leaves] = leavesFor(graph, operands);
  const [a, b, c] = nodes as [Node, Node, Node];
  const builders: Partial<Record<Op, () => Node>> = {
    add: () => graph.add(type, a, b),
    sub: () => graph.sub(type, a, b),
    mul: () => graph.mul(type, a, b, shift),
    shl: () => graph.shl(type, a, shift),
    shr: () => graph.shr(type, a, shift),
    cast: () => graph.cast(type, a),
    min: () => graph.min(type, a, b),
    max: () => graph.max(type, a, b),
    div: () => graph.div(type, a, b, shift),
    rem: () => graph.rem(type, a, b),
    mod: () => graph.mod(type, a, b),
    less: () => graph.less(a, b),
    lessEqual: () => graph.lessEqual(a, b),
    equal: () => graph.equal(a, b),
    and: () => graph.and(a, b),
    or: () => graph.or(a, b),
    not: () => graph.not(a),
    select: () => graph.select(type, a, b, c),
  };
  const name = `${type} ${op}${shift > 0 ? ` ${shift}` : ''} (${operands.map(describeOperand).join(', ')})`;
  return { name, op, type, shift, operands, node: builders[op]!(), leaves };
}

function kernelCase(kernel: (typeof kernelNames)[number]): OperationCase {
  const { takes, gives } = kernels[kernel];
  const graph = new Graph();
  const operands = takes.map(full);
  const [nodes, leaves] = leavesFor(graph, operands);
  const node = graph.call(kernel, nodes);
  return { name: `kernel ${kernel}`, op: 'call', type: gives, shift: 0, operands, node, leaves, kernel };
}

const cornersOf: Record<IntType, readonly number[]> = {
  bool: [0, 1],
  i16: [
    -32768, -32767, -16385, -16384, -16383, -257, -128, -2, -1, 0, 1, 2, 3, 255, 8192, 16383, 16384, 16385,
    32766, 32767,
  ],
  u16: [0, 1, 2, 255, 256, 257, 16383, 16384, 32767, 32768, 32769, 49152, 65534, 65535],
  i32: [
    ...[-2147483648, -2147483647, -1073741824, -65537, -65536, -65535, -32769, -32768, -16384, -256, -3, -1],
    ...[0, 1, 2, 3, 255, 16384, 32767, 32768, 65535, 65536, 65537, 131072, 8388608, 1073741823, 1073741824],
    ...[2147418113, 2147483646, 2147483647],
  ],
  u32: [0, 1, 2, 65535, 65536, 65537, 2147483647, 2147483648, 2147483649, 4294901760, 4294967294, 4294967295],
};

/** Values to try for one operand: corners inside its bounds, the bounds, and some by chance. */
function valuesFor(operand: Operand, chance: Chance, random: number): number[] {
  if ('value' in operand) return [operand.value];
  const { type, min, max } = operand;
  const inside = cornersOf[type].filter((value) => value >= min && value <= max);
  const ends = [min, Math.min(max, min + 1), Math.max(min, max - 1), max];
  const size = () => Math.floor(2 ** (chance.next() * 32)) * (chance.flip() ? -1 : 1);
  const drawn = chance.list(random, () =>
    chance.flip() ? chance.whole(min, max) : Math.min(max, Math.max(min, size())),
  );
  return [...new Set([...inside, ...ends, ...drawn])];
}

/**
 * Argument lists of a case: all combinations of its operands' corners, thinned to about `most`.
 * A case of no free operand has one empty list.
 */
export function argumentsFor({ operands, kernel }: OperationCase, most: number, seed: number): number[][] {
  const chance = new Chance(seed);
  const random = kernel === undefined ? { one: 60, more: 4 } : { one: 600, more: 25 };
  const choices = operands.map((operand) =>
    valuesFor(operand, chance, operands.length === 1 ? random.one : random.more),
  );
  const all = choices.reduce<number[][]>(
    (lists, values) => lists.flatMap((list) => values.map((one) => [...list, one])),
    [[]],
  );
  return all.length <= most ? all : chance.some(all, most);
}

/** Kernels are their own definition; they are compared with mathematics in a test of their own. */
export function exactResult({ op, type, shift, kernel }: OperationCase, values: readonly number[]): number {
  if (kernel !== undefined) return wrap[type](kernels[kernel].evaluate(...values));
  return wrapExact(type, exactly[op]!(values.map(BigInt), BigInt(shift)));
}

/**
 * Operations inside of operations, some deep: what a printer may get wrong is where brackets stand, and which
 * types meet. Their values are those of `evaluate`, whose single operations the other cases check.
 */
export function nestedCases(count: number, seed: number): OperationCase[] {
  const chance = new Chance(seed);
  return chance.list(count, (number) => {
    const graph = new Graph();
    const operands = [full('i16'), full('u16'), full('i32')];
    const [nodes, leaves] = leavesFor(graph, operands);
    const node = new NestedWriter(graph, nodes, chance).of(chance.pick(['i16', 'u16', 'i32', 'bool']), 5);
    return { name: `nested ${number}`, op: node.op, type: node.type, shift: 0, operands, node, leaves };
  });
}

class NestedWriter {
  constructor(
    private readonly graph: Graph,
    private readonly leaves: readonly Node[],
    private readonly chance: Chance,
  ) {}

  of(type: IntType, depth: number): Node {
    const { chance, graph } = this;
    if (type === 'bool') return this.truth(depth);
    if (depth === 0 || chance.flip(0.1)) return this.leaf(type);
    const inner = (of: IntType = type) => this.of(of, depth - 1);
    const other = (): IntType => chance.pick(['i16', 'u16', 'i32']);
    const choices = [
      () => graph.add(type, inner(), inner()),
      () => graph.sub(type, inner(), inner()),
      () => graph.sub(type, graph.constant(type, 0), inner()),
      () => graph.mul(type, inner(other()), inner(other()), chance.pick([0, 8, 14, 16])),
      () =>
        graph.mul(type, inner(), graph.constant('i16', chance.pick([3, -5, 4096])), chance.pick([0, 2, 14])),
      () => graph.min(type, inner(), inner()),
      () => graph.max(type, inner(), graph.constant(type, chance.pick([0, 7, 9999]))),
      () => graph.div(type, inner(other()), inner(other()), chance.pick([0, 14])),
      () =>
        graph.mod(
          type,
          inner(),
          chance.flip() ? inner() : graph.constant(type, chance.pick([8, 16_384, 10])),
        ),
      () => graph.shl(type, inner(), chance.whole(1, 9)),
      () => graph.shr(type, inner(other()), chance.whole(1, 20)),
      () => graph.cast(type, inner(other())),
      () => graph.select(type, this.truth(depth - 1), inner(), inner()),
      () =>
        type === 'u16' ? graph.call('hash', [inner()]) : graph.cast(type, graph.call('sine', [inner('u16')])),
    ];
    return chance.pick(choices)();
  }

  private truth(depth: number): Node {
    const { chance, graph } = this;
    const type = chance.pick(['i16', 'u16', 'i32'] as const);
    if (depth <= 1) return graph.less(this.leaf(type), this.leaf(type));
    const [a, b] = [this.of(type, depth - 1), this.of(type, depth - 1)];
    return chance.pick([
      () => graph.less(a, b),
      () => graph.lessEqual(a, b),
      () => graph.equal(a, b),
      () => graph.not(this.truth(depth - 1)),
      () => graph.and(this.truth(depth - 1), this.truth(depth - 1)),
      () => graph.or(this.truth(depth - 1), this.truth(depth - 1)),
    ])();
  }

  private leaf(type: IntType): Node {
    if (this.chance.flip(0.2)) return this.graph.constant(type, this.chance.pick([1, 5, 100, 20_000]));
    return this.graph.cast(type, this.chance.pick(this.leaves));
  }
}

/** What a case must give, by the definition of the graph. */
export function definedResult({ node }: OperationCase, values: readonly number[]): number {
  return evaluate([node], { input: () => 0, keyed: (slot) => values[slot]! })[0]!;
}
