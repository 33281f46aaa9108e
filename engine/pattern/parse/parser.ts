/** Statements and declarations: recursive descent, recovering at `;` and `}` so that all faults are told together. */
import type { Diagnostic, Span } from '../../diagnostic.ts';
import type { AssignSign, Declarator, FunctionDefinition, Statement, TopLevel, Typing } from './ast.ts';
import { Cursor, describe, SyntaxFault } from './cursor.ts';
import { parseExpression } from './expressions.ts';
import { lex } from './lexer.ts';
import { isPrecisionWord, isTypeWord } from './words.ts';

export interface Parsed {
  readonly declarations: readonly TopLevel[];
  readonly diagnostics: readonly Diagnostic[];
}

const assignSigns: readonly AssignSign[] = ['=', '+=', '-=', '*=', '/=', '%='];

/** Never throws. With errors in the diagnostics the declarations are what could be read. */
export function parse(source: string): Parsed {
  const { tokens, diagnostics } = lex(source);
  const cursor = new Cursor(tokens);
  const declarations: TopLevel[] = [];
  while (!cursor.atEnd) {
    recovering(cursor, () => declarations.push(...parseTopLevel(cursor)));
    // A stray brace ends no block here; without this the parser would stand still.
    if (cursor.is('}')) {
      const { span } = cursor.take();
      cursor.report(
        'stray-brace',
        'This "}" closes nothing.',
        'Remove it, or add the "{" it belongs to.',
        span,
      );
    }
  }
  return { declarations, diagnostics: [...diagnostics, ...cursor.diagnostics] };
}

function recovering(cursor: Cursor, parse: () => void): void {
  try {
    parse();
  } catch (fault) {
    if (!(fault instanceof SyntaxFault)) throw fault;
    cursor.recover();
  }
}

function parseTopLevel(cursor: Cursor): TopLevel[] {
  const start = cursor.token.span;
  if (cursor.is(';')) {
    throw cursor.fault(
      'stray-semicolon',
      'This ";" ends nothing.',
      'Remove it: behind the "}" of a function there is none.',
      start,
    );
  }
  if (cursor.accept('uniform')) {
    const typing = parseTyping(cursor);
    const names: { name: string; span: Span }[] = [];
    do {
      const token = cursor.expectName('a uniform');
      names.push({ name: token.text, span: token.span });
    } while (cursor.accept(','));
    refuseArray(cursor);
    cursor.expect(';', 'the uniform');
    return [{ kind: 'uniform', typing, names, span: cursor.spanFrom(start) }];
  }
  if (cursor.accept('const')) {
    const typing = parseTyping(cursor);
    const declarators = parseDeclarators(cursor);
    return [{ kind: 'constant', typing, declarators, span: cursor.spanFrom(start) }];
  }
  const result = parseTyping(cursor);
  const name = cursor.expectName('a function');
  if (!cursor.is('(')) {
    throw cursor.fault(
      'no-mutable-globals',
      `"${name.text}" is a variable outside of all functions.`,
      'Make it a const, a uniform, or a variable inside the function that needs it.',
      name.span,
    );
  }
  return [parseFunction(cursor, start, result, name.text, name.span)];
}

function parseFunction(
  cursor: Cursor,
  start: Span,
  result: Typing,
  name: string,
  nameSpan: Span,
): FunctionDefinition {
  cursor.expect('(', 'a function');
  const parameters: FunctionDefinition['parameters'][number][] = [];
  if (!cursor.is(')')) {
    do {
      const typing = parseTyping(cursor);
      const token = cursor.expectName('a parameter');
      parameters.push({ name: token.text, span: token.span, typing });
      refuseArray(cursor);
    } while (cursor.accept(','));
  }
  cursor.expect(')', 'the list of parameters');
  if (cursor.is(';')) {
    throw cursor.fault(
      'no-prototypes',
      `"${name}" is announced without a body.`,
      'Define a function in full before its first use.',
      cursor.token.span,
    );
  }
  const body = parseBraces(cursor, `the function "${name}"`);
  return { kind: 'function', name, nameSpan, result, parameters, body, span: cursor.spanFrom(start) };
}

function parseBraces(cursor: Cursor, what: string): Statement[] {
  cursor.expect('{', what);
  const statements: Statement[] = [];
  while (!cursor.is('}') && !cursor.atEnd) {
    recovering(cursor, () => {
      const statement = parseStatement(cursor);
      if (statement !== undefined) statements.push(statement);
    });
  }
  cursor.expect('}', what);
  return statements;
}

function parseStatement(cursor: Cursor): Statement | undefined {
  return cursor.nested(() => {
    const start = cursor.token.span;
    if (cursor.accept(';')) return undefined;
    if (cursor.is('{'))
      return { kind: 'block', statements: parseBraces(cursor, 'a block'), span: cursor.spanFrom(start) };
    if (cursor.is('if')) return parseIf(cursor);
    if (cursor.is('for')) return parseFor(cursor);
    if (cursor.accept('return')) {
      const value = parseExpression(cursor);
      cursor.expect(';', '"return"');
      return { kind: 'return', value, span: cursor.spanFrom(start) };
    }
    if (beginsDeclaration(cursor)) return parseDeclaration(cursor);
    const statement = parseAssignment(cursor);
    cursor.expect(';', 'the statement');
    return statement;
  });
}

function parseIf(cursor: Cursor): Statement {
  const start = cursor.take().span;
  cursor.expect('(', '"if"');
  const condition = parseExpression(cursor);
  cursor.expect(')', 'the condition');
  const yes = parseBranch(cursor);
  const no = cursor.accept('else') ? parseBranch(cursor) : undefined;
  return { kind: 'if', condition, yes, no, span: cursor.spanFrom(start) };
}

/** A branch without braces is a scope of its own all the same. */
function parseBranch(cursor: Cursor): Statement {
  const start = cursor.token.span;
  const statement = parseStatement(cursor);
  return {
    kind: 'block',
    statements: statement === undefined ? [] : [statement],
    span: cursor.spanFrom(start),
  };
}

/** A head that cannot be read is told once, and the body is read all the same. */
function parseFor(cursor: Cursor): Statement | undefined {
  const start = cursor.take().span;
  cursor.expect('(', '"for"');
  const head = readForHead(cursor);
  const body = parseBranch(cursor);
  return head && { kind: 'for', ...head, body, span: cursor.spanFrom(start) };
}

type ForHead = Pick<
  Extract<Statement, { kind: 'for' }>,
  'variable' | 'typing' | 'from' | 'condition' | 'step'
>;

function readForHead(cursor: Cursor): ForHead | undefined {
  try {
    return parseForHead(cursor);
  } catch (fault) {
    if (!(fault instanceof SyntaxFault) || !cursor.recoverBehindBracket()) throw fault;
    return undefined;
  }
}

function parseForHead(cursor: Cursor): ForHead {
  const typing = parseTyping(cursor);
  const variable = cursor.expectName('the loop').text;
  cursor.expect('=', 'the loop variable');
  const from = parseExpression(cursor);
  cursor.expect(';', 'the start of the loop');
  const condition = parseExpression(cursor);
  cursor.expect(';', 'the end of the loop');
  const step = parseAssignment(cursor);
  cursor.expect(')', 'the step of the loop');
  return { variable, typing, from, condition, step };
}

function beginsDeclaration(cursor: Cursor): boolean {
  const { token } = cursor;
  if (token.kind !== 'keyword') return false;
  if (token.text === 'const' || isPrecisionWord(token.text)) return true;
  return isTypeWord(token.text) && !(cursor.next.kind === 'sign' && cursor.next.text === '(');
}

function parseDeclaration(cursor: Cursor): Statement {
  const start = cursor.token.span;
  const constant = cursor.accept('const');
  const typing = parseTyping(cursor);
  return {
    kind: 'declare',
    constant,
    typing,
    declarators: parseDeclarators(cursor),
    span: cursor.spanFrom(start),
  };
}

function parseDeclarators(cursor: Cursor): Declarator[] {
  const declarators: Declarator[] = [];
  do {
    const token = cursor.expectName('a declaration');
    refuseArray(cursor);
    const value = cursor.accept('=') ? parseExpression(cursor) : undefined;
    declarators.push({ name: token.text, span: token.span, value });
  } while (cursor.accept(','));
  cursor.expect(';', 'the declaration');
  return declarators;
}

function parseAssignment(cursor: Cursor): Statement {
  const start = cursor.token.span;
  const isTarget = cursor.token.kind === 'name' && !(cursor.next.kind === 'sign' && cursor.next.text === '(');
  if (!isTarget) {
    const value = parseExpression(cursor);
    return { kind: 'evaluate', value, span: value.span };
  }
  const target = cursor.expectName('an assignment').text;
  refuseArray(cursor);
  const field = cursor.accept('.') ? cursor.expectName('a component').text : undefined;
  const { token } = cursor;
  if (cursor.accept('++') || cursor.accept('--')) {
    const span = cursor.spanFrom(start);
    // The check turns the 1 into 1.0 where the variable is a float.
    return {
      kind: 'assign',
      target,
      field,
      sign: token.text === '++' ? '+=' : '-=',
      value: { kind: 'int', value: 1, span },
      span,
    };
  }
  const sign = assignSigns.find((candidate) => cursor.accept(candidate));
  if (sign === undefined) {
    throw cursor.fault(
      'expected-assignment',
      `Behind "${target}" stands ${describe(token)}, but a statement that begins with a name sets it.`,
      'Write "=" and the new value.',
      token.span,
    );
  }
  const value = parseExpression(cursor);
  return { kind: 'assign', target, field, sign, value, span: cursor.spanFrom(start) };
}

function parseTyping(cursor: Cursor): Typing {
  const first = cursor.token.text;
  const precision = cursor.token.kind === 'keyword' && isPrecisionWord(first) ? first : undefined;
  if (precision !== undefined) cursor.take();
  const { token } = cursor;
  if (token.kind === 'keyword' && isTypeWord(token.text)) {
    cursor.take();
    if (precision !== undefined && token.text === 'bool') {
      cursor.report(
        'bool-has-no-precision',
        'A bool has no precision.',
        `Remove "${precision}".`,
        token.span,
      );
    }
    return { type: token.text, precision };
  }
  cursor.refuseWord();
  throw cursor.fault(
    'expected-type',
    `Here stands ${describe(token)}, but a type is needed.`,
    'Write float, vec2, vec3, int or bool.',
    token.span,
  );
}

function refuseArray(cursor: Cursor): void {
  if (!cursor.is('[')) return;
  throw cursor.fault(
    'no-arrays',
    'Arrays are not part of the pattern language.',
    'Use single values; for a list of colours use a gradient parameter.',
    cursor.token.span,
  );
}
