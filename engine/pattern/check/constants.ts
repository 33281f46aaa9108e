/** The value of a constant expression of type int, float or bool, where the check itself needs it: loop bounds. */
import type { BinarySign } from '../parse/ast.ts';
import type { TypedExpression } from './typed.ts';

const binary: Record<BinarySign, (a: number, b: number) => number | boolean> = {
  '+': (a, b) => (a + b) | 0,
  '-': (a, b) => (a - b) | 0,
  '*': Math.imul,
  '/': (a, b) => (b === 0 ? 0 : (a / b) | 0),
  '%': (a, b) => (b === 0 ? 0 : (a % b) | 0),
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '==': (a, b) => a === b,
  '!=': (a, b) => a !== b,
  '&&': (a, b) => Boolean(a && b),
  '||': (a, b) => Boolean(a || b),
  '^^': (a, b) => Boolean(a) !== Boolean(b),
};

/** Whole numbers in int32 arithmetic; undefined where the expression is no constant of ints. */
export function constantInt(
  expression: TypedExpression,
  variableValue: (name: object) => number | undefined,
): number | undefined {
  if (expression.type !== 'int') return undefined;
  if (expression.kind === 'number') return expression.value;
  if (expression.kind === 'variable') return variableValue(expression.variable);
  if (expression.kind === 'unary') {
    const operand = constantInt(expression.operand, variableValue);
    if (operand === undefined) return undefined;
    return expression.sign === '-' ? -operand | 0 : operand;
  }
  if (expression.kind === 'binary') {
    const left = constantInt(expression.left, variableValue);
    const right = constantInt(expression.right, variableValue);
    return left === undefined || right === undefined
      ? undefined
      : Number(binary[expression.sign](left, right));
  }
  return undefined;
}

/** `i < 4` and its kin, for one value of the loop variable. */
export function constantComparison(
  expression: TypedExpression,
  variableValue: (name: object) => number | undefined,
): boolean | undefined {
  if (expression.kind !== 'binary' || expression.type !== 'bool') return undefined;
  const left = constantInt(expression.left, variableValue);
  const right = constantInt(expression.right, variableValue);
  return left === undefined || right === undefined
    ? undefined
    : Boolean(binary[expression.sign](left, right));
}
