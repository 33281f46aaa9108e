/** Collects what is wrong with a piece, up to a number that a maker can still read. */
import type { Diagnostic } from '../diagnostic.ts';

export const mostDiagnostics = 200;

export class Findings {
  private readonly found: Diagnostic[] = [];
  private leftOut = 0;

  /** @param advice may be a function where it takes work to find, such as the nearest known name */
  error(code: string, path: string, message: string, advice: string | (() => string)): void {
    this.add('error', code, path, message, advice);
  }

  warning(code: string, path: string, message: string, advice: string | (() => string)): void {
    this.add('warning', code, path, message, advice);
  }

  append(diagnostics: readonly Diagnostic[]): void {
    for (const diagnostic of diagnostics) {
      if (this.found.length < mostDiagnostics) this.found.push(diagnostic);
      else this.leftOut += 1;
    }
  }

  get hasErrors(): boolean {
    return this.leftOut > 0 || this.found.some(({ severity }) => severity === 'error');
  }

  /** In the order of finding; a last one says how many were left out. */
  get diagnostics(): readonly Diagnostic[] {
    if (this.leftOut === 0) return this.found;
    const rest: Diagnostic = {
      code: 'more-diagnostics',
      severity: 'error',
      message: `${this.leftOut} more diagnostics are not shown.`,
      advice: 'Mend the first ones and check again.',
      path: '',
    };
    return [...this.found, rest];
  }

  private add(
    severity: Diagnostic['severity'],
    code: string,
    path: string,
    message: string,
    advice: string | (() => string),
  ): void {
    if (this.found.length >= mostDiagnostics) {
      this.leftOut += 1;
      return;
    }
    this.found.push({
      code,
      severity,
      message,
      advice: typeof advice === 'string' ? advice : advice(),
      path,
    });
  }
}
