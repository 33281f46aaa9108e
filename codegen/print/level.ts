/** A level as a reader expects it: `level_of_lowp(x)` in place of two limits and a shift. */
import type { Node } from '../../engine/pattern/ir.ts';
import { cast, type Expression } from './expression.ts';
import type { Context } from './operations.ts';

/**
 * A level is x limited to just below one and moved down to 8 bits. The helpers limit it themselves, so
 * limits that the ranges have made needless do no harm, and those in the graph can be taken off.
 */
export function levelExpression(level: Node, context: Context, names: ReadonlyMap<Node, Expression>): string {
  if (level.op === 'const') return String(level.value);
  const inner = level.op === 'cast' && !names.has(level) ? level.a : level;
  if (inner.op !== 'shr' || names.has(inner) || names.has(level))
    return cast('uint8_t', context.emit(level)).text;
  const { a, shift } = inner;
  const helper = { i16: 'level_of_lowp', u16: 'level_of_phase', i32: 'level_of_mediump' } as const;
  const isLevel =
    (a.type === 'i16' && shift === 6) || ((a.type === 'u16' || a.type === 'i32') && shift === 8);
  if (!isLevel) return cast('uint8_t', context.emit(level)).text;
  const fraction = shift + 8;
  const x = withoutLimit(withoutLimit(a, 'min', 2 ** fraction - 1, names), 'max', 0, names);
  return `${context.use(helper[a.type as keyof typeof helper])}(${context.emit(x).text})`;
}

function withoutLimit(
  node: Node,
  op: 'min' | 'max',
  bound: number,
  names: ReadonlyMap<Node, Expression>,
): Node {
  if (node.op !== op || names.has(node)) return node;
  if (node.b.op === 'const' && node.b.value === bound) return node.a;
  return node;
}
