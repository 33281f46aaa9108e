/** A pattern specialised for one clip: parameters, zone size and seed are folded in. */

import type { KeyedParameter } from '../look/keyframes.ts';
import type { Node } from './ir.ts';

/**
 * A gradient as the gradient operations read it. Segment s runs from position[s] to position[s + 1];
 * there are `position.length - 1` of them. Colours are Q2.14, three per stop.
 */
export interface GradientTable {
  readonly name: string;
  /** Q2.14, 0..16384, not falling. First is 0 and last 16384: the ends are stretched to the edges. */
  readonly position: Int16Array;
  /** floor(2^30 / width) of each segment, 0 where the width is 0. */
  readonly inverse: Int32Array;
  readonly colour: Int16Array;
}

export interface ClipProgram {
  /** Red, green, blue as levels 0..255. */
  readonly levels: readonly [Node, Node, Node];
  readonly gradients: readonly GradientTable[];
  /** What `keyed` nodes read, by slot. */
  readonly keyed: readonly KeyedParameter[];
  /** Name of a node for readers, taken from the variable that held it. */
  readonly names: ReadonlyMap<Node, string>;
}
