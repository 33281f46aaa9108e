/** Types of expressions. GLSL ES 3.00 has no implicit conversions, and neither have we. */
import type { Span } from '../../diagnostic.ts';
import type { BinarySign, Expression } from '../parse/ast.ts';
import { isTypeWord, type TypeName } from '../parse/words.ts';
import { describeBuiltin, isBuiltin, isRefusedBuiltin, resultOfBuiltin } from './builtins.ts';
import type { Scope } from './scope.ts';
import { givenTypes, type TypedExpression } from './typed.ts';

export const sizeOf: Record<TypeName, number> = { float: 1, int: 1, bool: 1, vec2: 2, vec3: 3 };
const isFloating = (type: TypeName) => type !== 'int' && type !== 'bool';

/** Undefined where something is wrong; the reason then stands in the scope's diagnostics. */
export function checkExpression(scope: Scope, expression: Expression): TypedExpression | undefined {
  const { span } = expression;
  switch (expression.kind) {
    case 'int':
      return { kind: 'number', type: 'int', value: expression.value, constant: true, span };
    case 'float':
      return { kind: 'number', type: 'float', value: expression.value, constant: true, span };
    case 'bool':
      return { kind: 'bool', type: 'bool', value: expression.value, constant: true, span };
    case 'name':
      return checkName(scope, expression.name, span);
    case 'call':
      return checkCall(scope, expression);
    case 'unary':
      return checkUnary(scope, expression);
    case 'binary':
      return checkBinary(scope, expression);
    case 'choice':
      return checkChoice(scope, expression);
    case 'swizzle': {
      const of = checkExpression(scope, expression.of);
      const components = of && componentsOf(scope, of.type, expression.field, span);
      if (of === undefined || components === undefined) return undefined;
      const type = components.length === 1 ? 'float' : (`vec${components.length}` as TypeName);
      return { kind: 'swizzle', type, of, components, constant: of.constant, span };
    }
  }
}

function checkName(scope: Scope, name: string, span: Span): TypedExpression | undefined {
  const meaning = scope.find(name);
  switch (meaning?.kind) {
    case 'variable':
      return {
        kind: 'variable',
        type: meaning.variable.type,
        variable: meaning.variable,
        constant: meaning.variable.constant,
        span,
      };
    case 'given':
      return {
        kind: 'given',
        type: givenTypes[meaning.name].type,
        name: meaning.name,
        constant: false,
        span,
      };
    case 'parameter': {
      const description = scope.descriptions[meaning.index]!;
      return {
        kind: 'parameter',
        type: parameterType[description.kind],
        index: meaning.index,
        constant: false,
        span,
      };
    }
    case 'gradient':
    case 'functions':
      return scope.error('needs-call', `"${name}" is a function.`, `Call it: ${name}(...).`, span);
    case undefined:
      return scope.error(
        'unknown-name',
        `Nothing here is called "${name}".`,
        isBuiltin(name) ? `Call it: ${name}(...).` : 'Declare it before this line, or correct the spelling.',
        span,
      );
  }
}

/** What each kind of parameter is in the source. */
export const parameterType = {
  number: 'float',
  whole: 'int',
  'yes-no': 'bool',
  colour: 'vec3',
  gradient: 'vec3',
} as const satisfies Record<string, TypeName>;

function checkAll(scope: Scope, expressions: readonly Expression[]): TypedExpression[] | undefined {
  const typed = expressions.map((expression) => checkExpression(scope, expression));
  return typed.every((one): one is TypedExpression => one !== undefined) ? typed : undefined;
}

function checkCall(scope: Scope, call: Extract<Expression, { kind: 'call' }>): TypedExpression | undefined {
  const { callee, span } = call;
  const args = checkAll(scope, call.args);
  if (args === undefined) return undefined;
  const types = args.map((arg) => arg.type);
  const constant = args.every((arg) => arg.constant);
  if (isTypeWord(callee)) return checkConstructor(scope, callee, args, constant, span);

  const meaning = scope.find(callee);
  if (meaning?.kind === 'gradient') {
    if (types.length === 1 && types[0] === 'float') {
      return {
        kind: 'gradient',
        type: 'vec3',
        index: meaning.index,
        position: args[0]!,
        constant: false,
        span,
      };
    }
    return scope.error(
      'wrong-arguments',
      `"${callee}" takes one float.`,
      'Give it a position from 0.0 to 1.0.',
      span,
    );
  }
  if (meaning?.kind === 'functions') {
    const target = meaning.overloads.find(
      ({ parameters }) =>
        parameters.length === types.length && parameters.every(({ type }, i) => type === types[i]),
    );
    if (target !== undefined) {
      return { kind: 'invoke', type: target.type, target, args, constant: false, span };
    }
    const wanted = meaning.overloads
      .map(({ parameters }) => `${callee}(${parameters.map(({ type }) => type).join(', ')})`)
      .join(' or ');
    return scope.error(
      'wrong-arguments',
      `"${callee}" does not take (${types.join(', ')}).`,
      `Call it as ${wanted}.`,
      span,
    );
  }
  if (meaning !== undefined) {
    return scope.error('not-a-function', `"${callee}" is no function here.`, 'Rename one of the two.', span);
  }
  if (callee === scope.current) {
    return scope.error(
      'no-recursion',
      `"${callee}" calls itself.`,
      'Use a for loop with constant bounds instead.',
      span,
    );
  }
  if (isBuiltin(callee)) {
    const type = resultOfBuiltin(callee, types);
    if (type !== undefined)
      return { kind: 'builtin', type, name: callee, args, constant: constant && callee !== 'hash', span };
    return scope.error(
      'wrong-arguments',
      `"${callee}" does not take (${types.join(', ')}).`,
      `Call it as ${describeBuiltin(callee)}.`,
      span,
    );
  }
  return isRefusedBuiltin(callee)
    ? scope.error(
        'not-in-the-language',
        `"${callee}" is not part of the pattern language.`,
        'Use the functions of the language notes.',
        span,
      )
    : scope.error(
        'unknown-function',
        `There is no function "${callee}".`,
        'Define it before this line, or correct the spelling.',
        span,
      );
}

function checkConstructor(
  scope: Scope,
  type: TypeName,
  args: readonly TypedExpression[],
  constant: boolean,
  span: Span,
): TypedExpression | undefined {
  const sizes = args.map((arg) => sizeOf[arg.type]);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const needed = sizeOf[type];
  const isSplat = args.length === 1 && sizes[0] === 1;
  if (args.length === 0 || (total < needed && !isSplat)) {
    return scope.error(
      'too-few-components',
      `${type}(...) needs ${needed === 1 ? 'a value' : `${needed} components`}.`,
      needed === 1 ? 'Give it one value.' : 'Give it one number for all, or one for each component.',
      span,
    );
  }
  if (total - sizes.at(-1)! >= needed) {
    return scope.error(
      'too-many-components',
      `${type}(...) has more arguments than it can hold.`,
      'Remove the last ones.',
      span,
    );
  }
  return { kind: 'construct', type, args, constant, span };
}

function checkUnary(
  scope: Scope,
  unary: Extract<Expression, { kind: 'unary' }>,
): TypedExpression | undefined {
  const operand = checkExpression(scope, unary.operand);
  if (operand === undefined) return undefined;
  if ((unary.sign === '!') !== (operand.type === 'bool')) {
    return scope.error(
      'wrong-type',
      `"${unary.sign}" does not work on ${operand.type}.`,
      unary.sign === '!' ? 'Compare first: !(a > b).' : 'Use a number.',
      unary.span,
    );
  }
  return {
    kind: 'unary',
    type: operand.type,
    sign: unary.sign,
    operand,
    constant: operand.constant,
    span: unary.span,
  };
}

/** A sum of a thousand terms leans a thousand deep to the left: walked, not recursed. */
function checkBinary(
  scope: Scope,
  binary: Extract<Expression, { kind: 'binary' }>,
): TypedExpression | undefined {
  const spine: Extract<Expression, { kind: 'binary' }>[] = [];
  let leftmost: Expression = binary;
  while (leftmost.kind === 'binary') {
    spine.push(leftmost);
    leftmost = leftmost.left;
  }
  let left = checkExpression(scope, leftmost);
  for (const { sign, right: rightSide, span } of spine.reverse()) {
    const right = checkExpression(scope, rightSide);
    if (left === undefined || right === undefined) {
      left = undefined;
      continue;
    }
    const type = binaryType(sign, left.type, right.type);
    left =
      type === undefined
        ? reportBinary(scope, sign, left.type, right.type, span)
        : { kind: 'binary', type, sign, left, right, constant: left.constant && right.constant, span };
  }
  return left;
}

function binaryType(sign: BinarySign, left: TypeName, right: TypeName): TypeName | undefined {
  switch (sign) {
    case '&&':
    case '||':
    case '^^':
      return left === 'bool' && right === 'bool' ? 'bool' : undefined;
    case '==':
    case '!=':
      return left === right ? 'bool' : undefined;
    case '<':
    case '<=':
    case '>':
    case '>=':
      return left === right && (left === 'float' || left === 'int') ? 'bool' : undefined;
    case '%':
      return left === 'int' && right === 'int' ? 'int' : undefined;
    default:
      if (left === right) return left === 'bool' ? undefined : left;
      if (!isFloating(left) || !isFloating(right)) return undefined;
      if (left === 'float') return right;
      return right === 'float' ? left : undefined;
  }
}

function reportBinary(
  scope: Scope,
  sign: BinarySign,
  left: TypeName,
  right: TypeName,
  span: Span,
): undefined {
  const pair = [left, right];
  const advice =
    pair.includes('int') && pair.some(isFloating)
      ? 'Write the whole number with a point (2.0), or convert it: float(i).'
      : pair.includes('vec2') && pair.includes('vec3')
        ? 'Take the components you need: .xy of the vec3.'
        : 'Both sides must be of one type.';
  return scope.error('wrong-type', `"${sign}" does not work between ${left} and ${right}.`, advice, span);
}

function checkChoice(
  scope: Scope,
  choice: Extract<Expression, { kind: 'choice' }>,
): TypedExpression | undefined {
  const condition = checkExpression(scope, choice.condition);
  const yes = checkExpression(scope, choice.yes);
  const no = checkExpression(scope, choice.no);
  if (condition === undefined || yes === undefined || no === undefined) return undefined;
  if (condition.type !== 'bool') {
    return scope.error(
      'wrong-type',
      `The condition is ${condition.type}, not bool.`,
      'Compare: a > b ? x : y.',
      condition.span,
    );
  }
  if (yes.type !== no.type) {
    return scope.error(
      'wrong-type',
      `The two sides are ${yes.type} and ${no.type}.`,
      'Both sides must be of one type.',
      choice.span,
    );
  }
  const constant = condition.constant && yes.constant && no.constant;
  return { kind: 'choice', type: yes.type, condition, yes, no, constant, span: choice.span };
}

const componentSets = ['xyzw', 'rgba', 'stpq'];

/** Positions of the components a field names; each set by itself, as in the standard. */
export function componentsOf(scope: Scope, type: TypeName, field: string, span: Span): number[] | undefined {
  const size = sizeOf[type];
  const set = componentSets.find((letters) => [...field].every((letter) => letters.includes(letter)));
  const components = [...field].map((letter) => set?.indexOf(letter) ?? -1);
  if (!isFloating(type) || size === 1) {
    return scope.error('no-components', `A ${type} has no components.`, `Remove ".${field}".`, span);
  }
  if (set === undefined || components.some((component) => component >= size) || components.length > 3) {
    return scope.error(
      'no-such-component',
      `A ${type} has no ".${field}".`,
      `Use up to three of .${componentSets[0]!.slice(0, size).split('').join(', .')} or .${componentSets[1]!.slice(0, size).split('').join(', .')}.`,
      span,
    );
  }
  return components;
}
