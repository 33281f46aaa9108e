/**
 * What an operation of a pattern costs on an ATmega328P, in cycles and in bytes of program.
 *
 * Cycles are those measured for the primitives on an emulated chip, with the moves around them that
 * avr-gcc -Os usually adds; bytes are of the same kind. Both are figures for a sum, not for one operation.
 */
import { kernels } from '../../engine/fixed/kernels.ts';
import { type Node, type Op, operandsOf } from '../../engine/pattern/ir.ts';
import type { HelperName } from '../kernels/kernels.ts';

export interface Cost {
  readonly cycles: number;
  readonly bytes: number;
}

export const noCost: Cost = { cycles: 0, bytes: 0 };

export function sumOf(costs: readonly Cost[]): Cost {
  return costs.reduce(
    (sum, { cycles, bytes }) => ({ cycles: sum.cycles + cycles, bytes: sum.bytes + bytes }),
    noCost,
  );
}

/** In 16 bits, and in 32. */
type Costs = readonly [narrow: Cost, wide: Cost];

const cost = (cycles: number, bytes: number): Cost => ({ cycles, bytes });
const both = (narrow: Cost, wide: Cost): Costs => [narrow, wide];
const free = both(noCost, noCost);
const compared = both(cost(5, 6), cost(8, 12));
const divided = both(cost(650, 16), cost(680, 18));

const costs: Record<Exclude<Op, 'call'>, Costs> = {
  const: free,
  input: free,
  zone: free,
  parameter: free,
  keyed: free,
  add: both(cost(4, 6), cost(10, 16)),
  sub: both(cost(4, 6), cost(10, 16)),
  mul: both(cost(30, 16), cost(80, 22)),
  shl: both(cost(4, 6), cost(16, 12)),
  shr: both(cost(6, 7), cost(16, 14)),
  cast: both(cost(1, 3), cost(2, 4)),
  min: both(cost(6, 10), cost(12, 18)),
  max: both(cost(6, 10), cost(12, 18)),
  div: divided,
  rem: divided,
  mod: divided,
  less: compared,
  lessEqual: compared,
  equal: compared,
  and: both(cost(3, 4), cost(3, 4)),
  or: both(cost(3, 4), cost(3, 4)),
  not: both(cost(2, 2), cost(2, 2)),
  select: both(cost(6, 10), cost(10, 14)),
  gradientSegment: both(cost(50, 12), cost(50, 12)),
  gradientPart: both(cost(70, 16), cost(70, 16)),
  gradientColour: both(cost(70, 14), cost(70, 14)),
};

/** Bytes of a call and its arguments; the kernel itself is counted once for the whole sketch. */
const callBytes = 10;

export function costOf(node: Node): Cost {
  if (node.op === 'call') return cost(kernels[node.kernel].avrCycles + 10, callBytes);
  const wide = [node, ...operandsOf(node)].some(({ type }) => type === 'i32' || type === 'u32');
  return costs[node.op][wide ? 1 : 0];
}

/** Program of a helper that is no one-liner, in bytes; what is not named here is small and counted with its calls. */
const largeHelpers: Partial<Record<HelperName, number>> = {
  mul_q14: 44,
  sine: 120,
  root: 160,
  rootMedium: 180,
  length2: 220,
  length3: 240,
  exp2: 180,
  log2: 220,
  angle: 240,
  hash: 70,
  hash2: 30,
  mul_q16: 150,
  floor_mod: 120,
  ratio_of: 260,
  gradient_segment: 50,
  gradient_part: 60,
  gradient_colour: 80,
};

export const helperBytes = (helper: HelperName): number => largeHelpers[helper] ?? 20;
