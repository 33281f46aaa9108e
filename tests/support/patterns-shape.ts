/**
 * The shape of a source as two parsers see it: ours, and the grammar of the GLSL standard as
 * `@shaderfrog/glsl-parser` has it. Both are told as lines, with every expression fully bracketed.
 */
import { parser } from '@shaderfrog/glsl-parser';
import type { Expression, Statement, TopLevel } from '../../engine/pattern/parse/ast.ts';
import { parse } from '../../engine/pattern/parse/parser.ts';

export function ourShape(source: string): string[] {
  const { declarations, diagnostics } = parse(source);
  if (diagnostics.length > 0) throw new Error(`our parser refuses it: ${diagnostics[0]!.message}`);
  return declarations.flatMap(topLevelLines);
}

function topLevelLines(declaration: TopLevel): string[] {
  switch (declaration.kind) {
    case 'uniform':
      return [`uniform ${declaration.names.map(({ name }) => name).join(', ')}`];
    case 'constant':
      return declaration.declarators.map(({ name, value }) => `declare ${name} = ${bracketed(value!)}`);
    case 'function':
      return [
        `function ${declaration.name}(${declaration.parameters.map(({ name }) => name).join(', ')})`,
        ...declaration.body.flatMap(statementLines),
        'end',
      ];
  }
}

function statementLines(statement: Statement): string[] {
  switch (statement.kind) {
    case 'declare':
      return statement.declarators.map(({ name, value }) =>
        value === undefined ? `declare ${name}` : `declare ${name} = ${bracketed(value)}`,
      );
    case 'assign': {
      const target = `${statement.target}${statement.field === undefined ? '' : `.${statement.field}`}`;
      // A step is an assignment of 1 with the span of the whole statement.
      const isStep = statement.value.span.start === statement.span.start;
      const step = statement.sign === '+=' ? '++' : '--';
      return [isStep ? `${target}${step}` : `${target} ${statement.sign} ${bracketed(statement.value)}`];
    }
    case 'if':
      return [
        `if ${bracketed(statement.condition)}`,
        ...statementLines(statement.yes),
        ...(statement.no === undefined ? [] : ['else', ...statementLines(statement.no)]),
        'end',
      ];
    case 'for':
      return [
        `for ${statement.variable} = ${bracketed(statement.from)}`,
        bracketed(statement.condition),
        ...statementLines(statement.step),
        ...statementLines(statement.body),
        'end',
      ];
    case 'block':
      return statement.statements.flatMap(statementLines);
    case 'return':
      return [`return ${bracketed(statement.value)}`];
    case 'evaluate':
      return [bracketed(statement.value)];
  }
}

function bracketed(expression: Expression): string {
  switch (expression.kind) {
    case 'int':
    case 'float':
    case 'bool':
      return String(expression.value);
    case 'name':
      return expression.name;
    case 'call':
      return `${expression.callee}(${expression.args.map(bracketed).join(', ')})`;
    case 'unary':
      return `(${expression.sign}${bracketed(expression.operand)})`;
    case 'binary':
      return `(${bracketed(expression.left)} ${expression.sign} ${bracketed(expression.right)})`;
    case 'choice':
      return `(${bracketed(expression.condition)} ? ${bracketed(expression.yes)} : ${bracketed(expression.no)})`;
    case 'swizzle':
      return `${bracketed(expression.of)}.${expression.field}`;
  }
}

/** The other parser types its tree loosely, and by its own words not always rightly. */
interface Theirs {
  readonly type: string;
  // biome-ignore lint/suspicious/noExplicitAny: the fields of each node type are known from its documentation
  readonly [field: string]: any;
}

export function theirShape(source: string): string[] {
  const { program } = parser.parse(source, { quiet: true }) as unknown as { program: Theirs[] };
  return program.flatMap(theirLines);
}

function theirLines(node: Theirs | undefined): string[] {
  switch (node?.type) {
    case undefined:
    case 'literal':
    case 'keyword':
      return [];
    case 'function': {
      const { header, parameters = [] } = node.prototype;
      const names = parameters
        .filter((one: Theirs) => one.type === 'parameter_declaration')
        .map((one: Theirs) => one.identifier.identifier);
      return [`function ${header.name.identifier}(${names.join(', ')})`, ...theirLines(node.body), 'end'];
    }
    case 'compound_statement':
      return node.statements.flatMap(theirLines);
    case 'declaration_statement':
      return theirLines(node.declaration);
    case 'declarator_list': {
      const isUniform = (node.specified_type.qualifiers ?? []).some((one: Theirs) => one.token === 'uniform');
      if (isUniform)
        return [`uniform ${node.declarations.map((one: Theirs) => one.identifier.identifier).join(', ')}`];
      return node.declarations.map((one: Theirs) =>
        one.initializer === undefined || one.initializer === null
          ? `declare ${one.identifier.identifier}`
          : `declare ${one.identifier.identifier} = ${theirBracketed(one.initializer)}`,
      );
    }
    case 'expression_statement':
      return node.expression === '' || node.expression === null ? [] : [theirBracketed(node.expression)];
    case 'return_statement':
      return [`return ${theirBracketed(node.expression)}`];
    case 'if_statement': {
      const otherwise = (node.else ?? []).filter((one: Theirs) => one.type !== 'keyword');
      return [
        `if ${theirBracketed(node.condition)}`,
        ...theirLines(node.body),
        ...(otherwise.length === 0 ? [] : ['else', ...otherwise.flatMap(theirLines)]),
        'end',
      ];
    }
    case 'for_statement': {
      const [variable] = node.init.declarations;
      return [
        `for ${variable.identifier.identifier} = ${theirBracketed(variable.initializer)}`,
        theirBracketed(node.condition),
        theirBracketed(node.operation),
        ...theirLines(node.body),
        'end',
      ];
    }
    default:
      throw new Error(`no shape for ${node!.type}`);
  }
}

function theirBracketed(node: Theirs): string {
  switch (node.type) {
    case 'int_constant':
    case 'float_constant':
      return String(Number.parseFloat(node.token));
    case 'bool_constant':
    case 'keyword':
      return node.token;
    case 'identifier':
      return node.identifier;
    case 'group':
      return theirBracketed(node.expression);
    case 'unary':
      return `(${node.operator.literal}${theirBracketed(node.expression)})`;
    case 'binary':
      return `(${theirBracketed(node.left)} ${node.operator.literal} ${theirBracketed(node.right)})`;
    case 'ternary':
      return `(${theirBracketed(node.expression)} ? ${theirBracketed(node.left)} : ${theirBracketed(node.right)})`;
    case 'assignment':
      return `${theirBracketed(node.left)} ${node.operator.literal} ${theirBracketed(node.right)}`;
    case 'postfix':
      return `${theirBracketed(node.expression)}${theirPostfix(node.postfix)}`;
    case 'function_call': {
      const { identifier } = node as unknown as { identifier: Theirs };
      const callee =
        identifier.type === 'type_specifier'
          ? (identifier.specifier.token ?? identifier.specifier.identifier)
          : identifier.identifier;
      const args = (node.args ?? []).filter((one: Theirs) => one.type !== 'literal').map(theirBracketed);
      return `${callee}(${args.join(', ')})`;
    }
    default:
      throw new Error(`no shape for the expression ${node.type}`);
  }
}

/** Of several swizzles in a row the last one is the outermost node. */
function theirPostfix(node: Theirs): string {
  if (node.type === 'postfix') return `${theirPostfix(node.expression)}${theirPostfix(node.postfix)}`;
  return node.type === 'field_selection' ? `.${node.selection.identifier}` : node.literal;
}
