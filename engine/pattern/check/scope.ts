/** Names in sight, and the list of what is wrong so far. */
import type { Diagnostic, Span } from '../../diagnostic.ts';
import type { ParameterDescription } from '../../piece/schema.ts';
import type { Precision } from '../parse/words.ts';
import type { GivenName, TypedFunction, Variable } from './typed.ts';

export type Meaning =
  | { readonly kind: 'variable'; readonly variable: Variable; readonly writable: boolean }
  | { readonly kind: 'given'; readonly name: GivenName }
  | { readonly kind: 'parameter'; readonly index: number }
  | { readonly kind: 'gradient'; readonly index: number }
  | { readonly kind: 'functions'; readonly overloads: TypedFunction[] };

const mostDiagnostics = 50;

export class Scope {
  readonly diagnostics: Diagnostic[] = [];
  readonly precisions = new Map<number, Precision>();
  /** Product of the turns of the loops around the present statement. */
  turns = 1;
  /** The function whose body is being read: it may not call itself. */
  current: string | undefined;
  currentResult: { readonly type: string; readonly name: string } | undefined;
  private readonly frames: Map<string, Meaning>[] = [new Map()];

  constructor(readonly descriptions: readonly ParameterDescription[]) {}

  find(name: string): Meaning | undefined {
    for (let i = this.frames.length - 1; i >= 0; i--) {
      const meaning = this.frames[i]!.get(name);
      if (meaning !== undefined) return meaning;
    }
    return undefined;
  }

  /** In the innermost frame alone: hiding an outer name is allowed, taking one twice is not. */
  findHere(name: string): Meaning | undefined {
    return this.frames.at(-1)!.get(name);
  }

  define(name: string, meaning: Meaning, span: Span): void {
    if (this.findHere(name) !== undefined) {
      this.error('name-taken', `"${name}" is already defined here.`, 'Choose another name.', span);
      return;
    }
    this.frames.at(-1)!.set(name, meaning);
  }

  /** Makes a name of the innermost frame read-only: a loop's body may not set what the loop counts with. */
  seal(name: string, variable: Variable): void {
    this.frames.at(-1)!.set(name, { kind: 'variable', variable, writable: false });
  }

  within<T>(run: () => T): T {
    this.frames.push(new Map());
    try {
      return run();
    } finally {
      this.frames.pop();
    }
  }

  error(code: string, message: string, advice: string, span: Span): undefined {
    this.report('error', code, message, advice, span);
    return undefined;
  }

  warn(code: string, message: string, advice: string, span: Span): void {
    this.report('warning', code, message, advice, span);
  }

  private report(
    severity: 'error' | 'warning',
    code: string,
    message: string,
    advice: string,
    span: Span,
  ): void {
    if (this.diagnostics.length < mostDiagnostics) {
      this.diagnostics.push({ code, severity, message, advice, span });
    }
  }
}
