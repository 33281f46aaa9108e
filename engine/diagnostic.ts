/**
 * Everything that can be wrong with a maker's work, as data. The page, the command line and the
 * tests show the same diagnostics; nothing in the engine throws for bad input.
 */

/** A stretch of source text. Offsets count UTF-16 units from 0; line and column count from 1. */
export interface Span {
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
}

export type Severity = 'error' | 'warning';

export interface Diagnostic {
  /** Stable, kebab-case: what tests and documentation refer to. */
  readonly code: string;
  readonly severity: Severity;
  /** What is wrong, in one sentence. */
  readonly message: string;
  /** What to do about it, in one sentence. */
  readonly advice: string;
  /** Where in the piece: `looks[0].tracks[1].clips[0].zone`. Empty for the file as a whole. */
  readonly path?: string;
  /** Where in a pattern's source, or in the text of a file that is no JSON. */
  readonly span?: Span;
  /** Where in the text of the piece file the value at `path` stands, if it was read from text. */
  readonly inFile?: Span;
}

/** A result that is either whole or not there at all; warnings may accompany a value. */
export type Checked<T> =
  | { readonly value: T; readonly diagnostics: readonly Diagnostic[] }
  | { readonly value?: undefined; readonly diagnostics: readonly Diagnostic[] };

export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((diagnostic) => diagnostic.severity === 'error');
}

/** `['looks', 0, 'name']` as `looks[0].name`. */
export function pathText(keys: readonly PropertyKey[]): string {
  let text = '';
  for (const key of keys) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? String(key) : `.${String(key)}`;
  }
  return text;
}
