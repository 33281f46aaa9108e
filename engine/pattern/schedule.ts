/** Which nodes of a graph become variables, and whether they are computed once a frame or for every pixel. */
import { inOrder, type Node, operandsOf } from './ir.ts';

export interface Schedule {
  /** Nodes that get a variable, in order, by where they are computed. */
  readonly frame: readonly Node[];
  readonly pixel: readonly Node[];
  readonly isVariable: (node: Node) => boolean;
}

const isLeaf = (node: Node) => operandsOf(node).length === 0;

/**
 * A node becomes a variable if it is used twice, if it is used for every pixel but changes only with the
 * frame, if `keep` asks for it (it has a name), or if its expression would nest deeper than `nesting`.
 */
export function schedule(
  roots: readonly Node[],
  { nesting, keep = () => false }: { readonly nesting: number; readonly keep?: (node: Node) => boolean },
): Schedule {
  const nodes = inOrder(roots);
  const uses = new Map<Node, number>();
  const crosses = new Set<Node>();
  for (const node of nodes) {
    for (const operand of operandsOf(node)) {
      uses.set(operand, (uses.get(operand) ?? 0) + 1);
      if (node.rate === 'pixel' && operand.rate !== 'pixel') crosses.add(operand);
    }
  }
  for (const root of roots) {
    uses.set(root, (uses.get(root) ?? 0) + 1);
    if (root.rate !== 'pixel') crosses.add(root);
  }
  const depths = new Map<Node, number>();
  const variables = new Set<Node>();
  for (const node of nodes) {
    if (isLeaf(node)) continue;
    const depth =
      1 + Math.max(0, ...operandsOf(node).map((one) => (variables.has(one) ? 0 : (depths.get(one) ?? 0))));
    depths.set(node, depth);
    if (uses.get(node)! > 1 || crosses.has(node) || keep(node) || depth > nesting) variables.add(node);
  }
  const chosen = nodes.filter((node) => variables.has(node));
  return {
    frame: chosen.filter((node) => node.rate !== 'pixel'),
    pixel: chosen.filter((node) => node.rate === 'pixel'),
    isVariable: (node) => variables.has(node),
  };
}
