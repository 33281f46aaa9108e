/** Statements: what may be written, loop bounds, and that every way through a function returns. */
import type { Span } from '../../diagnostic.ts';
import type { Declarator, Expression, Statement, Typing } from '../parse/ast.ts';
import { constantComparison, constantInt } from './constants.ts';
import { checkExpression, componentsOf } from './expressions.ts';
import type { Scope } from './scope.ts';
import type { TypedExpression, TypedStatement, Variable } from './typed.ts';

const mostTurns = 1024;
/** Values of const ints, for loop bounds. */
const constantInts = new WeakMap<Variable, number>();
const knownInt = (variable: object) => constantInts.get(variable as Variable);

export function checkStatements(scope: Scope, statements: readonly Statement[]): TypedStatement[] {
  return statements.flatMap((statement) => checkStatement(scope, statement));
}

function checkStatement(scope: Scope, statement: Statement): TypedStatement[] {
  const { span } = statement;
  switch (statement.kind) {
    case 'declare':
      return statement.declarators.flatMap((declarator) =>
        checkDeclarator(scope, statement.typing, declarator, statement.constant),
      );
    case 'assign':
      return checkAssignment(scope, statement);
    case 'block':
      return [
        { kind: 'block', statements: scope.within(() => checkStatements(scope, statement.statements)), span },
      ];
    case 'if': {
      const condition = checkExpression(scope, statement.condition);
      const yes = scope.within(() => checkStatements(scope, [statement.yes]));
      const no = scope.within(() => checkStatements(scope, statement.no === undefined ? [] : [statement.no]));
      if (condition !== undefined && condition.type !== 'bool') {
        scope.error(
          'wrong-type',
          `The condition is ${condition.type}, not bool.`,
          'Compare: if (a > b).',
          condition.span,
        );
      }
      return condition === undefined ? [] : [{ kind: 'if', condition, yes, no, span }];
    }
    case 'for':
      return checkFor(scope, statement);
    case 'return': {
      const value = checkExpression(scope, statement.value);
      const result = scope.currentResult!;
      if (value !== undefined && value.type !== result.type) {
        scope.error(
          'wrong-type',
          `"${result.name}" gives ${result.type}, but this is ${value.type}.`,
          `Return a ${result.type}.`,
          value.span,
        );
        return [];
      }
      return value === undefined ? [] : [{ kind: 'return', value, span }];
    }
    case 'evaluate':
      checkExpression(scope, statement.value);
      scope.error(
        'no-effect',
        'This computes a value and drops it.',
        'Assign it to a variable, or remove the line.',
        span,
      );
      return [];
  }
}

/** Shared by locals and by constants outside of functions. */
export function checkDeclarator(
  scope: Scope,
  { type, precision }: Typing,
  { name, span, value: source }: Declarator,
  constant: boolean,
): TypedStatement[] {
  const value = source === undefined ? undefined : checkExpression(scope, source);
  const variable: Variable = { name, type, precision, constant };
  // Defined even when its value is wrong, so that its uses do not complain as well.
  scope.define(name, { kind: 'variable', variable, writable: !constant }, span);
  if (constant && source === undefined) {
    scope.error(
      'const-needs-value',
      `The const "${name}" has no value.`,
      'Write "= ..." behind the name.',
      span,
    );
  }
  if (value === undefined)
    return source === undefined && !constant ? [{ kind: 'declare', variable, value, span }] : [];
  if (value.type !== type) {
    scope.error(
      'wrong-type',
      `"${name}" is ${type}, but its value is ${value.type}.`,
      conversionAdvice(type, value),
      value.span,
    );
    return [];
  }
  if (constant && !value.constant) {
    scope.error(
      'not-constant',
      `The value of the const "${name}" is not known in advance.`,
      'Leave "const" out, or use numbers and other consts only.',
      value.span,
    );
    return [];
  }
  const known = constant ? constantInt(value, knownInt) : undefined;
  if (known !== undefined) constantInts.set(variable, known);
  return [{ kind: 'declare', variable, value, span }];
}

function conversionAdvice(type: string, value: TypedExpression): string {
  if (type === 'float' && value.type === 'int')
    return 'Write the number with a point (2.0), or convert it: float(...).';
  if (type === 'int' && value.type === 'float') return 'Convert it: int(...).';
  return `Give it a ${type}.`;
}

function checkAssignment(scope: Scope, statement: Extract<Statement, { kind: 'assign' }>): TypedStatement[] {
  const { target, field, sign, span } = statement;
  const meaning = scope.find(target);
  if (meaning?.kind !== 'variable' || !meaning.writable) {
    checkExpression(scope, statement.value);
    scope.error(
      meaning === undefined ? 'unknown-name' : 'not-writable',
      meaning === undefined ? `Nothing here is called "${target}".` : `"${target}" cannot be set.`,
      meaning === undefined
        ? 'Declare it first, with its type.'
        : 'Copy it into a variable of your own and change that.',
      span,
    );
    return [];
  }
  const { variable } = meaning;
  const components = field === undefined ? undefined : componentsOf(scope, variable.type, field, span);
  if (field !== undefined && components === undefined) return [];
  if (components !== undefined && new Set(components).size !== components.length) {
    scope.error('component-twice', `".${field}" sets a component twice.`, 'Name each component once.', span);
    return [];
  }
  const name: Expression = { kind: 'name', name: target, span };
  const present: Expression = field === undefined ? name : { kind: 'swizzle', of: name, field, span };
  const source = stepOfType(statement.value, variable.type);
  const value = checkExpression(
    scope,
    sign === '='
      ? source
      : { kind: 'binary', sign: sign.slice(0, -1) as '+', left: present, right: source, span },
  );
  if (value === undefined) return [];
  const wanted =
    components === undefined ? variable.type : components.length === 1 ? 'float' : `vec${components.length}`;
  if (value.type !== wanted) {
    scope.error(
      'wrong-type',
      `"${target}" takes ${wanted}, but this is ${value.type}.`,
      conversionAdvice(wanted, value),
      value.span,
    );
    return [];
  }
  return [{ kind: 'assign', variable, components, value, span }];
}

/** The 1 of `x++` is written by the parser, so its span is the statement's own: it takes the type of x. */
function stepOfType(value: Expression, type: string): Expression {
  const isStep = value.kind === 'int' && value.value === 1 && value.span.end - value.span.start > 2;
  return isStep && type !== 'int' ? { kind: 'float', value: 1, span: value.span } : value;
}

function checkFor(scope: Scope, loop: Extract<Statement, { kind: 'for' }>): TypedStatement[] {
  return scope.within(() => {
    const variable: Variable = { name: loop.variable, type: 'int', precision: undefined, constant: false };
    const values = loopValues(scope, loop, variable);
    const outer = scope.turns;
    scope.turns = outer * Math.max(1, values?.length ?? 1);
    if (scope.turns > mostTurns) {
      scope.error(
        'too-many-turns',
        `The loops make more than ${mostTurns} turns together.`,
        'Let them count less far.',
        loop.span,
      );
    }
    const body = checkStatements(scope, withoutBraces(loop.body));
    scope.turns = outer;
    return values === undefined ? [] : [{ kind: 'for', variable, values, body, span: loop.span }];
  });
}

/** By the standard the body of a loop is in one scope with the loop variable, braces or not. */
function withoutBraces(body: Statement): readonly Statement[] {
  if (body.kind !== 'block') return [body];
  const [only] = body.statements;
  return only?.kind === 'block' ? only.statements : body.statements;
}

/** Runs the loop's head on whole numbers: `int i = CONST; i < CONST; i++` and its kin. */
function loopValues(
  scope: Scope,
  loop: Extract<Statement, { kind: 'for' }>,
  variable: Variable,
): number[] | undefined {
  const refuse = (message: string, span: Span): undefined =>
    scope.error(
      'loop-bounds',
      message,
      'Write it as for (int i = 0; i < 4; i++) with constant numbers.',
      span,
    );
  if (loop.typing.type !== 'int') {
    // Defined all the same, so that its uses do not complain as well.
    const other: Variable = { ...variable, type: loop.typing.type };
    scope.define(loop.variable, { kind: 'variable', variable: other, writable: false }, loop.span);
    return refuse('The loop variable is not an int.', loop.from.span);
  }
  const from = checkExpression(scope, loop.from);
  scope.define(loop.variable, { kind: 'variable', variable, writable: true }, loop.span);
  const condition = checkExpression(scope, loop.condition);
  const step = checkStatement(scope, loop.step)[0];
  // From here on, in the body, the loop alone may count.
  scope.seal(loop.variable, variable);
  if (from === undefined || condition === undefined || step === undefined) return undefined;
  const start = constantInt(from, knownInt);
  if (start === undefined) return refuse('The start of the loop is not known in advance.', from.span);
  if (step.kind !== 'assign' || step.variable !== variable) {
    return refuse('The step does not change the loop variable.', loop.step.span);
  }
  const values: number[] = [];
  for (let value = start; ; ) {
    const valueHere = (name: object) => (name === variable ? value : knownInt(name));
    const goesOn = constantComparison(condition, valueHere);
    if (goesOn === undefined) return refuse('The end of the loop is not known in advance.', condition.span);
    if (!goesOn) return values;
    values.push(value);
    const next = constantInt(step.value, valueHere);
    if (next === undefined) return refuse('The step of the loop is not known in advance.', loop.step.span);
    if (values.length > mostTurns) {
      return scope.error(
        'too-many-turns',
        `The loop makes more than ${mostTurns} turns.`,
        'Let it count less far.',
        loop.span,
      );
    }
    value = next;
  }
}

/** True if no way through the statements misses a return. */
export function alwaysReturns(statements: readonly TypedStatement[]): boolean {
  return statements.some((statement) => {
    if (statement.kind === 'return') return true;
    if (statement.kind === 'block') return alwaysReturns(statement.statements);
    if (statement.kind === 'if') return alwaysReturns(statement.yes) && alwaysReturns(statement.no);
    return statement.kind === 'for' && statement.values.length > 0 && alwaysReturns(statement.body);
  });
}
