/** From source and parameter descriptions to a graph: parse, check, lower; each stage tells all it found. */

import { type Diagnostic, hasErrors } from '../diagnostic.ts';
import { limits } from '../piece/limits.ts';
import type { ParameterDescription } from '../piece/schema.ts';
import { utf8Length } from '../utf8.ts';
import { check } from './check/check.ts';
import commonSource from './library/common.glsl';
import { type LoweredPattern, lower } from './lower/lower.ts';
import { parse } from './parse/parser.ts';

export interface CompiledPattern extends LoweredPattern {
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

export interface Compilation {
  /** Present where there are no errors. */
  readonly pattern?: CompiledPattern;
  readonly diagnostics: readonly Diagnostic[];
}

export const mostSourceBytes = limits.patternBytes;

/** The functions of our library stand before every pattern; they are parsed once. */
const common = parse(commonSource).declarations;

/** Never throws for a bad source, and takes bounded time whatever it is given. */
export function compilePattern(source: string, parameters: readonly ParameterDescription[]): Compilation {
  const bytes = utf8Length(source);
  if (bytes > mostSourceBytes) {
    const diagnostic: Diagnostic = {
      code: 'source-too-long',
      severity: 'error',
      message: `The source has ${bytes} bytes; ${mostSourceBytes} is the most.`,
      advice: 'Shorten it, or make two patterns of it.',
      span: { start: 0, end: Math.min(source.length, 1), line: 1, column: 1 },
    };
    return { diagnostics: [diagnostic] };
  }
  const { declarations, diagnostics } = parse(source);
  if (hasErrors(diagnostics)) return { diagnostics };
  const checked = check(common, declarations, parameters);
  if (checked.pattern === undefined) return { diagnostics: checked.diagnostics };
  const { lowered, diagnostics: found } = lower(checked.pattern, parameters);
  const all = [...checked.diagnostics, ...found];
  return lowered === undefined
    ? { diagnostics: all }
    : { pattern: { ...lowered, source, parameters }, diagnostics: all };
}
