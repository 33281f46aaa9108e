/** Whole numbers: 16 bits where the range allows, else 32, wrapping as the standard says. */
import type { IntType, Range } from '../../fixed/integers.ts';
import type { Graph } from '../graph.ts';
import type { Node } from '../ir.ts';
import { addRange, divRange, fits, mulRange, remRange, subRange } from '../range.ts';
import type { Whole } from './value.ts';

const typeFor = (range: Range): IntType => (fits(range, 'i16') ? 'i16' : 'i32');
const whole = (node: Node): Whole => ({ kind: 'whole', node });

type Operator = '+' | '-' | '*' | '/' | '%';

export function wholeOf(graph: Graph, value: number): Whole {
  return whole(graph.constant(typeFor({ min: value, max: value }), value));
}

export function combine(graph: Graph, sign: Operator, { node: a }: Whole, { node: b }: Whole): Whole {
  switch (sign) {
    case '+':
      return whole(graph.add(typeFor(addRange(a, b)), a, b));
    case '-':
      return whole(graph.sub(typeFor(subRange(a, b)), a, b));
    case '*':
      return whole(graph.mul(typeFor(mulRange(a, b, 0)), a, b, 0));
    case '/':
      return whole(graph.div(typeFor(divRange(a, b, 0)), a, b, 0));
    case '%':
      return whole(graph.rem(typeFor(remRange(a, b)), a, b));
  }
}

export function compare(graph: Graph, sign: 'less' | 'lessEqual' | 'equal', a: Whole, b: Whole): Node {
  const [left, right] = alike(graph, a.node, b.node);
  return graph[sign](left, right);
}

export function select(graph: Graph, condition: Node, a: Whole, b: Whole): Whole {
  const [left, right] = alike(graph, a.node, b.node);
  return whole(graph.select(left.type, condition, left, right));
}

export function extreme(graph: Graph, op: 'min' | 'max', a: Whole, b: Whole): Whole {
  const [left, right] = alike(graph, a.node, b.node);
  return whole(graph[op](left.type, left, right));
}

export function sign(graph: Graph, { node }: Whole): Whole {
  const zero = graph.constant(node.type, 0);
  const [one, none, minus] = [1, 0, -1].map((value) => graph.constant('i16', value)) as [Node, Node, Node];
  const positive = graph.select('i16', graph.less(zero, node), one, none);
  return whole(graph.select('i16', graph.less(node, zero), minus, positive));
}

/** One type for both: the wider one. */
function alike(graph: Graph, a: Node, b: Node): [Node, Node] {
  const type = a.type === 'i16' && b.type === 'i16' ? 'i16' : 'i32';
  return [graph.cast(type, a), graph.cast(type, b)];
}
