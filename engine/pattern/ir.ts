/**
 * The one meaning of a pattern: a graph of integer operations without loops, branches or state.
 *
 * Every node is readonly and says its type, the range its value can take, and its rate. Functions are
 * inlined, loops unrolled and conditions turned into `select` before this point, so each operation is
 * total and a pattern ends in bounded time. The preview and the code generator print the same graph;
 * `evaluate.ts` defines it.
 *
 * Formats are a matter of the lowering, not of the graph: here `i16` may be a Q2.14 or a count.
 */
import type { IntType } from '../fixed/integers.ts';
import type { KernelName } from '../fixed/kernels.ts';

/** How often a value can change, cheapest first. */
export const rates = ['constant', 'frame', 'pixel'] as const;
export type Rate = (typeof rates)[number];

export interface Facts {
  readonly type: IntType;
  /** Proved bounds of the value, both included. */
  readonly min: number;
  readonly max: number;
  readonly rate: Rate;
}

export type InputName =
  /** i32, Q16.16 seconds since the clip began. */
  | 'time'
  /** i16, Q2.14 through the clip, 0..16383. */
  | 'turn'
  /** u16, index in the zone. */
  | 'index'
  /** i16, Q2.14. */
  | 'placeX'
  | 'placeY';

/** u16 number of indices; u32 floor(2^32 / count), 0 for a count of 1; u16 seed. */
export type ZoneField = 'count' | 'inverse' | 'seed';

type Binary<O extends string> = { readonly op: O; readonly a: Node; readonly b: Node };

export type Operation =
  | { readonly op: 'const'; readonly value: number }
  | { readonly op: 'input'; readonly input: InputName }
  /** A scalar of a parameter; a constant or `keyed` once the pattern is specialised for a clip. */
  | { readonly op: 'parameter'; readonly slot: number }
  /** A constant once the pattern is specialised. */
  | { readonly op: 'zone'; readonly field: ZoneField }
  /** The value of a keyframed parameter in this frame, in the parameter's format. */
  | { readonly op: 'keyed'; readonly slot: number }
  /** Wrapped after the exact sum or difference. */
  | Binary<'add'>
  | Binary<'sub'>
  /** floor(a * b / 2^shift), wrapped. */
  | (Binary<'mul'> & { readonly shift: number })
  /** a * 2^shift, wrapped. */
  | { readonly op: 'shl'; readonly a: Node; readonly shift: number }
  /** floor(a / 2^shift), wrapped. */
  | { readonly op: 'shr'; readonly a: Node; readonly shift: number }
  /** Wraps a to the node's type. */
  | { readonly op: 'cast'; readonly a: Node }
  | Binary<'min'>
  | Binary<'max'>
  /** trunc(a * 2^shift / b), wrapped; 0 where b is 0. */
  | (Binary<'div'> & { readonly shift: number })
  /** Sign of the dividend; 0 where b is 0. */
  | Binary<'rem'>
  /** Sign of the divisor; 0 where b is 0. */
  | Binary<'mod'>
  | Binary<'less'>
  | Binary<'lessEqual'>
  | Binary<'equal'>
  | Binary<'and'>
  | Binary<'or'>
  | { readonly op: 'not'; readonly a: Node }
  /** Both sides are evaluated in meaning; a printer may skip the one not taken. */
  | { readonly op: 'select'; readonly condition: Node; readonly a: Node; readonly b: Node }
  | { readonly op: 'call'; readonly kernel: KernelName; readonly args: readonly Node[] }
  /** Segment of a gradient at Q2.14 position a (0..16384); the part of it, Q2.14; a channel there, Q2.14. */
  | { readonly op: 'gradientSegment'; readonly gradient: number; readonly a: Node }
  | { readonly op: 'gradientPart'; readonly gradient: number; readonly a: Node; readonly segment: Node }
  | {
      readonly op: 'gradientColour';
      readonly gradient: number;
      readonly channel: number;
      readonly segment: Node;
      readonly part: Node;
    };

export type Node = Facts & Operation;
export type Op = Operation['op'];
export type NodeOf<O extends Op> = Extract<Node, { readonly op: O }>;

/** The operands of a node, in order of evaluation. */
export function operandsOf(node: Node): readonly Node[] {
  switch (node.op) {
    case 'const':
    case 'input':
    case 'parameter':
    case 'zone':
    case 'keyed':
      return [];
    case 'shl':
    case 'shr':
    case 'cast':
    case 'not':
    case 'gradientSegment':
      return [node.a];
    case 'select':
      return [node.condition, node.a, node.b];
    case 'call':
      return node.args;
    case 'gradientPart':
      return [node.a, node.segment];
    case 'gradientColour':
      return [node.segment, node.part];
    default:
      return [node.a, node.b];
  }
}

/** All nodes that the roots need, operands before their users. Iterative: a sum may be thousands deep. */
export function inOrder(roots: readonly Node[]): Node[] {
  const ordered: Node[] = [];
  const state = new Map<Node, 'open' | 'done'>();
  const stack = [...roots].reverse();
  while (stack.length > 0) {
    const node = stack.at(-1)!;
    if (state.get(node) === undefined) {
      state.set(node, 'open');
      for (const operand of [...operandsOf(node)].reverse()) if (!state.has(operand)) stack.push(operand);
    } else {
      stack.pop();
      if (state.get(node) === 'open') {
        state.set(node, 'done');
        ordered.push(node);
      }
    }
  }
  return ordered;
}
