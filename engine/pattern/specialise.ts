/** A compiled pattern for one clip: present parameter values, zone size and seed are folded in. */
import { Graph } from './graph.ts';
import { inOrder, type Node, operandsOf, type ZoneField } from './ir.ts';
import type { LoweredPattern } from './lower/lower.ts';

/** What a parameter's scalar is in this clip: a raw value in its format, or a slot that changes over time. */
export type Filling = { readonly raw: number } | { readonly keyedSlot: number };

export interface Specialised {
  readonly levels: readonly [Node, Node, Node];
  readonly names: ReadonlyMap<Node, string>;
}

/**
 * Formats were chosen before, by declared ranges, so this folding changes no bits.
 * @param fillings by slot
 */
export function specialise(
  pattern: LoweredPattern,
  fillings: readonly Filling[],
  zone: Readonly<Record<ZoneField, number>>,
): Specialised {
  const graph = new Graph();
  const built = new Map<Node, Node>();
  const names = new Map<Node, string>();
  for (const node of inOrder(pattern.levels)) {
    const next = rebuilt(graph, node, fillings, zone, built);
    built.set(node, next);
    const name = pattern.names.get(node);
    if (name !== undefined && !names.has(next) && operandsOf(next).length > 0) names.set(next, name);
  }
  const levels = pattern.levels.map((level) => built.get(level)!) as [Node, Node, Node];
  return { levels, names };
}

function rebuilt(
  graph: Graph,
  node: Node,
  fillings: readonly Filling[],
  zone: Readonly<Record<ZoneField, number>>,
  built: ReadonlyMap<Node, Node>,
): Node {
  if (node.op === 'zone') return graph.constant(node.type, zone[node.field]);
  if (node.op === 'parameter') {
    const filling = fillings[node.slot]!;
    return 'raw' in filling
      ? graph.constant(node.type, filling.raw)
      : graph.keyed(filling.keyedSlot, node.type, node);
  }
  // The zone's size bounds the index closer, which proves some wraps idle.
  if (node.op === 'input' && node.input === 'index') {
    return graph.input('index', node.type, { min: 0, max: zone.count - 1 });
  }
  return graph.rebuild(
    node,
    operandsOf(node).map((operand) => built.get(operand)!),
  );
}
