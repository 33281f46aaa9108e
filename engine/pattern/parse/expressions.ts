/** Expressions by precedence, GLSL ES 3.00 section 5.1. */
import type { BinarySign, Expression, UnarySign } from './ast.ts';
import { type Cursor, describe } from './cursor.ts';
import { isTypeWord } from './words.ts';

/** Loosest first. All associate to the left. */
const levels: readonly (readonly BinarySign[])[] = [
  ['||'],
  ['^^'],
  ['&&'],
  ['==', '!='],
  ['<', '>', '<=', '>='],
  ['+', '-'],
  ['*', '/', '%'],
];

const refusedSigns = ['&', '|', '^', '~', '<<', '>>'];

export function parseExpression(cursor: Cursor): Expression {
  return cursor.nested(() => parseChoice(cursor));
}

function parseChoice(cursor: Cursor): Expression {
  const start = cursor.token.span;
  const condition = parseBinary(cursor, 0);
  if (!cursor.accept('?')) return condition;
  const yes = parseExpression(cursor);
  cursor.expect(':', 'a choice with "?"');
  const no = parseExpression(cursor);
  return { kind: 'choice', condition, yes, no, span: cursor.spanFrom(start) };
}

function parseBinary(cursor: Cursor, level: number): Expression {
  const signs = levels[level];
  if (signs === undefined) return parseUnary(cursor);
  const start = cursor.token.span;
  let left = parseBinary(cursor, level + 1);
  for (;;) {
    refuseSigns(cursor);
    const sign = signs.find((candidate) => cursor.is(candidate));
    if (sign === undefined) return left;
    cursor.take();
    const right = parseBinary(cursor, level + 1);
    left = { kind: 'binary', sign, left, right, span: cursor.spanFrom(start) };
  }
}

function parseUnary(cursor: Cursor): Expression {
  refuseSigns(cursor);
  const token = cursor.token;
  if (token.kind === 'sign' && (token.text === '-' || token.text === '+' || token.text === '!')) {
    cursor.take();
    const operand = cursor.nested(() => parseUnary(cursor));
    return { kind: 'unary', sign: token.text as UnarySign, operand, span: cursor.spanFrom(token.span) };
  }
  refuseStep(cursor);
  const value = parsePostfix(cursor);
  refuseStep(cursor);
  return value;
}

function refuseStep(cursor: Cursor): void {
  const { token } = cursor;
  if (!cursor.is('++') && !cursor.is('--')) return;
  throw cursor.fault(
    'step-inside-expression',
    `"${token.text}" cannot stand inside an expression.`,
    'Change the variable in a statement of its own.',
    token.span,
  );
}

function parsePostfix(cursor: Cursor): Expression {
  const start = cursor.token.span;
  let value = parsePrimary(cursor);
  for (let swizzles = 0; ; swizzles++) {
    if (cursor.is('[')) {
      throw cursor.fault(
        'no-arrays',
        'Square brackets are not part of the pattern language.',
        'Take a component as .x, .y or .z; for a list of colours use a gradient parameter.',
        cursor.token.span,
      );
    }
    if (!cursor.accept('.')) return value;
    const field = cursor.token;
    if (field.kind !== 'name' || swizzles > 8) {
      throw cursor.fault(
        'expected-component',
        `Behind the point stands ${describe(field)}, but a component is needed.`,
        'Write .x, .y, .z or .r, .g, .b, or a combination such as .xy.',
        field.span,
      );
    }
    cursor.take();
    value = { kind: 'swizzle', of: value, field: field.text, span: cursor.spanFrom(start) };
  }
}

function parsePrimary(cursor: Cursor): Expression {
  const token = cursor.token;
  if (token.kind === 'int') return parseInt10(cursor);
  if (token.kind === 'float') {
    cursor.take();
    return { kind: 'float', value: inBounds(cursor, Number.parseFloat(token.text)), span: token.span };
  }
  if (cursor.is('true') || cursor.is('false')) {
    cursor.take();
    return { kind: 'bool', value: token.text === 'true', span: token.span };
  }
  if (cursor.accept('(')) {
    const inner = parseExpression(cursor);
    cursor.expect(')', 'the opening parenthesis');
    return inner;
  }
  const callable = token.kind === 'name' || (token.kind === 'keyword' && isTypeWord(token.text));
  if (callable && cursor.next.text === '(' && cursor.next.kind === 'sign') return parseCall(cursor);
  if (token.kind === 'name') {
    cursor.expectName('an expression');
    return { kind: 'name', name: token.text, span: token.span };
  }
  cursor.refuseWord();
  throw cursor.fault(
    'expected-value',
    `Here stands ${describe(token)}, but a value is needed.`,
    'Write a number, a name, a call or a bracketed expression.',
    token.span,
  );
}

function parseCall(cursor: Cursor): Expression {
  const callee = cursor.take();
  cursor.expect('(', 'a call');
  const args: Expression[] = [];
  if (!cursor.is(')')) {
    do args.push(parseExpression(cursor));
    while (cursor.accept(','));
  }
  cursor.expect(')', `the call of "${callee.text}"`);
  return { kind: 'call', callee: callee.text, args, span: cursor.spanFrom(callee.span) };
}

function parseInt10(cursor: Cursor): Expression {
  const token = cursor.take();
  if (!/^(0|[1-9]\d*)$/.test(token.text)) {
    cursor.report(
      'plain-whole-numbers',
      `"${token.text}" is not a plain whole number.`,
      'Write whole numbers in decimal, without a leading 0 and without u; a float has a point: 2.0.',
      token.span,
    );
    return { kind: 'int', value: 0, span: token.span };
  }
  return { kind: 'int', value: inBounds(cursor, Number.parseInt(token.text, 10)), span: token.span };
}

const largestLiteral = 32768;

function inBounds(cursor: Cursor, value: number): number {
  if (value <= largestLiteral) return value;
  cursor.report(
    'number-too-large',
    `The number is larger than ${largestLiteral}.`,
    'Pattern numbers reach from -32768 to 32768; scale the computation.',
    cursor.previous.span,
  );
  return 0;
}

function refuseSigns(cursor: Cursor): void {
  const { token } = cursor;
  if (token.kind !== 'sign' || !refusedSigns.includes(token.text)) return;
  throw cursor.fault(
    'no-bit-operators',
    `"${token.text}" is not part of the pattern language.`,
    'Use + - * / %, comparisons, and && || ^^ ! for logic.',
    token.span,
  );
}
