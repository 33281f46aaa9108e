/** The definition of every operation of the graph. Constant folding and the printers' tests both rest on it. */
import { divide, floorModulo, multiply, remainder } from '../fixed/arithmetic.ts';
import { type GradientTable, gradientColour, gradientPart, gradientSegment } from '../fixed/gradient.ts';
import { wrap } from '../fixed/integers.ts';
import { kernels } from '../fixed/kernels.ts';
import { inOrder, type Node, type Operation, operandsOf } from './ir.ts';

/** What the leaves of a graph read. */
export interface Inputs {
  readonly input: (name: string) => number;
  readonly keyed?: (slot: number) => number;
  readonly parameter?: (slot: number) => number;
  readonly gradients?: readonly GradientTable[];
}

/** The value of one operation from the values of its operands, in the order of `operandsOf`. */
export function operate(node: Node, values: readonly number[], inputs: Inputs): number {
  return wrap[node.type](exact(node, values, inputs));
}

function exact(node: Operation, [a = 0, b = 0, c = 0]: readonly number[], inputs: Inputs): number {
  switch (node.op) {
    case 'const':
      return node.value;
    case 'input':
      return inputs.input(node.input);
    case 'zone':
      return inputs.input(node.field);
    case 'parameter':
      return inputs.parameter!(node.slot);
    case 'keyed':
      return inputs.keyed!(node.slot);
    case 'add':
      return a + b;
    case 'sub':
      return a - b;
    case 'mul':
      return multiply(a, b, node.shift);
    case 'shl':
      return a * 2 ** node.shift;
    case 'shr':
      return Math.floor(a / 2 ** node.shift);
    case 'cast':
      return a;
    case 'min':
      return Math.min(a, b);
    case 'max':
      return Math.max(a, b);
    case 'div':
      return divide(a, b, node.shift);
    case 'rem':
      return remainder(a, b);
    case 'mod':
      return floorModulo(a, b);
    case 'less':
      return Number(a < b);
    case 'lessEqual':
      return Number(a <= b);
    case 'equal':
      return Number(a === b);
    case 'and':
      return a & b;
    case 'or':
      return a | b;
    case 'not':
      return 1 - a;
    case 'select':
      return a === 1 ? b : c;
    case 'call':
      return node.args.length === 1
        ? kernels[node.kernel].evaluate(a)
        : kernels[node.kernel].evaluate(...[a, b, c].slice(0, node.args.length));
    case 'gradientSegment':
      return gradientSegment(inputs.gradients![node.gradient]!, a);
    case 'gradientPart':
      return gradientPart(inputs.gradients![node.gradient]!, a, b);
    case 'gradientColour':
      return gradientColour(inputs.gradients![node.gradient]!, node.channel, a, b);
  }
}

/** Values of the roots, node by node: slow, plain, and the oracle for what the printers make of the graph. */
export function evaluate(roots: readonly Node[], inputs: Inputs): number[] {
  const values = new Map<Node, number>();
  for (const node of inOrder(roots)) {
    values.set(
      node,
      operate(
        node,
        operandsOf(node).map((operand) => values.get(operand)!),
        inputs,
      ),
    );
  }
  return roots.map((root) => values.get(root)!);
}
