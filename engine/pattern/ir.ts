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

export type Rate = 'constant' | 'frame' | 'pixel';

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

export type Node = Facts &
  (
    | { readonly op: 'const'; readonly value: number }
    | { readonly op: 'input'; readonly input: InputName }
    /** Replaced by a constant, or by `keyed`, when a pattern is specialised for a clip. */
    | { readonly op: 'parameter'; readonly slot: number }
    /** u16 number of indices in the zone; a constant once specialised. And floor(2^32 / count), u32. */
    | { readonly op: 'zone'; readonly field: 'count' | 'inverse' | 'seed' }
    /** The value of a keyframed parameter in this frame, in the parameter's format. */
    | { readonly op: 'keyed'; readonly slot: number }
    /** Wrap to the node's type after the exact sum or difference. */
    | { readonly op: 'add' | 'sub'; readonly a: Node; readonly b: Node }
    /** floor(a * b / 2^shift), wrapped. */
    | { readonly op: 'mul'; readonly a: Node; readonly b: Node; readonly shift: number }
    /** a * 2^amount, wrapped; floor(a / 2^amount). */
    | { readonly op: 'shl' | 'shr'; readonly a: Node; readonly amount: number }
    /** Wrap a to the node's type. */
    | { readonly op: 'cast'; readonly a: Node }
    | { readonly op: 'min' | 'max'; readonly a: Node; readonly b: Node }
    /** trunc(a * 2^shift / b), wrapped; 0 where b is 0. */
    | { readonly op: 'div'; readonly a: Node; readonly b: Node; readonly shift: number }
    /** Sign of the dividend (`%`), sign of the divisor (`mod`); 0 where b is 0. */
    | { readonly op: 'rem' | 'mod'; readonly a: Node; readonly b: Node }
    /** bool from two operands of one type. */
    | { readonly op: 'less' | 'lessEqual' | 'equal'; readonly a: Node; readonly b: Node }
    | { readonly op: 'and' | 'or'; readonly a: Node; readonly b: Node }
    | { readonly op: 'not'; readonly a: Node }
    /** Both sides are evaluated in meaning; a printer may skip the one not taken. */
    | { readonly op: 'select'; readonly condition: Node; readonly a: Node; readonly b: Node }
    | { readonly op: 'call'; readonly kernel: KernelName; readonly args: readonly Node[] }
    /** Number of the gradient's segment at Q2.14 position a; how far through it, Q2.14; a channel, Q2.14. */
    | { readonly op: 'gradientSegment'; readonly gradient: number; readonly a: Node }
    | { readonly op: 'gradientPart'; readonly gradient: number; readonly a: Node; readonly segment: Node }
    | {
        readonly op: 'gradientColour';
        readonly gradient: number;
        readonly channel: 0 | 1 | 2;
        readonly segment: Node;
        readonly part: Node;
      }
  );

export type Op = Node['op'];
export type NodeOf<O extends Op> = Extract<Node, { readonly op: O }>;
