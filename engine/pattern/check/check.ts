/** Names, types and rules of a whole pattern. Every fault of the stage is told, not the first alone. */
import type { Diagnostic, Span } from '../../diagnostic.ts';
import { hasErrors } from '../../diagnostic.ts';
import type { ParameterDescription } from '../../piece/schema.ts';
import type { FunctionDefinition, TopLevel, UniformDeclaration } from '../parse/ast.ts';
import type { Precision } from '../parse/words.ts';
import { isBuiltin, isRefusedBuiltin } from './builtins.ts';
import { parameterType } from './expressions.ts';
import { Scope } from './scope.ts';
import { alwaysReturns, checkDeclarator, checkStatements } from './statements.ts';
import {
  givenNames,
  type TypedFunction,
  type TypedPattern,
  type TypedStatement,
  type Variable,
} from './typed.ts';

export interface CheckedPattern {
  /** Present where there are no errors. */
  readonly pattern?: TypedPattern & { readonly constants: readonly TypedStatement[] };
  readonly diagnostics: readonly Diagnostic[];
}

const nowhere: Span = { start: 0, end: 0, line: 1, column: 1 };

/**
 * Checks the declarations of a pattern behind those of our library. Spans of the library's own
 * declarations never show: it has no faults, which its tests prove.
 */
export function check(
  library: readonly TopLevel[],
  declarations: readonly TopLevel[],
  descriptions: readonly ParameterDescription[],
): CheckedPattern {
  const scope = new Scope(descriptions);
  const constants: TypedStatement[] = [];
  for (const name of givenNames) scope.define(name, { kind: 'given', name }, nowhere);
  descriptions.forEach((description, index) => {
    if (description.kind === 'gradient') {
      scope.define(`gradient_${description.name}`, { kind: 'gradient', index }, nowhere);
    }
  });
  for (const declaration of [...library, ...declarations]) {
    if (declaration.kind === 'uniform') checkUniform(scope, declaration);
    else if (declaration.kind === 'function') checkFunction(scope, declaration, library);
    else {
      for (const declarator of declaration.declarators) {
        refuseTakenName(scope, declarator.name, declarator.span);
        constants.push(...checkDeclarator(scope, declaration.typing, declarator, true));
      }
    }
  }
  reportUnusedDescriptions(scope);
  const light = findLight(scope, declarations);
  if (light === undefined || hasErrors(scope.diagnostics)) return { diagnostics: scope.diagnostics };
  return { pattern: { light, precisions: scope.precisions, constants }, diagnostics: scope.diagnostics };
}

function refuseTakenName(scope: Scope, name: string, span: Span): boolean {
  if (!isBuiltin(name) && !isRefusedBuiltin(name)) return false;
  scope.error('name-taken', `"${name}" is a function of GLSL.`, 'Choose another name.', span);
  return true;
}

function checkUniform(scope: Scope, { typing, names }: UniformDeclaration): void {
  for (const { name, span } of names) {
    refuseTakenName(scope, name, span);
    const index = scope.descriptions.findIndex((one) => one.name === name && one.kind !== 'gradient');
    const description = scope.descriptions[index];
    if (description === undefined) {
      scope.error(
        'uniform-without-description',
        `The parameter "${name}" has no description.`,
        'Describe it beside the source: kind, label, range and default.',
        span,
      );
      // Its uses shall not complain as well.
      const variable: Variable = { name, ...typing, constant: false };
      scope.define(name, { kind: 'variable', variable, writable: false }, span);
      continue;
    }
    const wanted = parameterType[description.kind];
    if (wanted !== typing.type) {
      scope.error(
        'uniform-type',
        `"${name}" is described as ${description.kind}, which is ${wanted}, but declared ${typing.type}.`,
        `Declare it "uniform ${wanted} ${name};".`,
        span,
      );
    }
    scope.define(name, { kind: 'parameter', index }, span);
    scope.precisions.set(index, defaultPrecision(description, typing.precision));
  }
}

/** Colours stay between 0 and 1: the cheaper format holds them whatever the source says. */
function defaultPrecision(description: ParameterDescription, declared: Precision | undefined): Precision {
  return description.kind === 'colour' ? 'lowp' : (declared ?? 'mediump');
}

function checkFunction(scope: Scope, definition: FunctionDefinition, library: readonly TopLevel[]): void {
  const { name, nameSpan, result } = definition;
  const parameters: Variable[] = definition.parameters.map((parameter) => ({
    name: parameter.name,
    ...parameter.typing,
    constant: false,
  }));
  const faultsBefore = scope.diagnostics.length;
  scope.current = name;
  scope.currentResult = { type: result.type, name };
  const body = scope.within(() => {
    parameters.forEach((variable, i) => {
      scope.define(
        variable.name,
        { kind: 'variable', variable, writable: true },
        definition.parameters[i]!.span,
      );
    });
    return checkStatements(scope, definition.body);
  });
  scope.current = undefined;
  const ours = library.includes(definition);
  const typed: TypedFunction = {
    name,
    ours,
    type: result.type,
    precision: result.precision,
    parameters,
    body,
  };
  // A statement with a fault is left out, and might have been the return.
  if (scope.diagnostics.length === faultsBefore && !alwaysReturns(body)) {
    scope.error(
      'missing-return',
      `"${name}" may end without a result.`,
      `End it with "return" and a ${result.type}.`,
      nameSpan,
    );
  }
  if (refuseTakenName(scope, name, nameSpan)) return;
  const known = scope.findHere(name);
  if (known?.kind !== 'functions') {
    scope.define(name, { kind: 'functions', overloads: [typed] }, nameSpan);
    return;
  }
  const isTwin = known.overloads.some(
    (other) =>
      other.parameters.length === parameters.length &&
      other.parameters.every(({ type }, i) => type === parameters[i]!.type),
  );
  const isTaken = !ours && known.overloads.some((other) => other.ours);
  if (isTaken || isTwin) {
    scope.error('name-taken', `There is a function "${name}" already.`, 'Choose another name.', nameSpan);
    return;
  }
  known.overloads.push(typed);
}

function reportUnusedDescriptions(scope: Scope): void {
  scope.descriptions.forEach((description, index) => {
    if (description.kind === 'gradient' || scope.precisions.has(index)) return;
    scope.warn(
      'parameter-not-declared',
      `The parameter "${description.name}" is described, but the source does not declare it.`,
      `Add "uniform ${parameterType[description.kind]} ${description.name};" or remove the description.`,
      nowhere,
    );
  });
}

function findLight(scope: Scope, declarations: readonly TopLevel[]): TypedFunction | undefined {
  const found = scope.find('light');
  const light =
    found?.kind === 'functions' ? found.overloads.find((one) => one.parameters.length === 0) : undefined;
  const written = declarations.find((one) => one.kind === 'function' && one.name === 'light');
  const isWritten = written !== undefined;
  const span = written?.kind === 'function' ? written.nameSpan : nowhere;
  if (light?.type === 'vec3') return light;
  if (!isWritten || light !== undefined || found?.kind !== 'functions') {
    scope.error(
      'no-light',
      isWritten ? '"light" does not give a colour.' : 'The pattern has no function "light".',
      'Write lowp vec3 light() { return vec3(red, green, blue); }.',
      span,
    );
    return undefined;
  }
  scope.error('no-light', '"light" takes no arguments.', 'Write lowp vec3 light() { ... }.', span);
  return undefined;
}
