/** A pattern specialised for one clip: parameters, zone size and seed are folded in. */

import type { GradientTable } from '../fixed/gradient.ts';
import type { KeyedParameter } from '../look/keyframes.ts';
import type { Node } from './ir.ts';

export type { GradientTable };

export interface ClipProgram {
  /** Red, green, blue as levels 0..255. */
  readonly levels: readonly [Node, Node, Node];
  readonly gradients: readonly GradientTable[];
  /** What `keyed` nodes read, by slot. */
  readonly keyed: readonly KeyedParameter[];
  /** Name of a node for readers, taken from the variable that held it. */
  readonly names: ReadonlyMap<Node, string>;
}
