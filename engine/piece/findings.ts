/** Collects what is wrong with a piece, up to a number that a maker can still read. */
import type { Diagnostic, Severity } from '../diagnostic.ts';

export const mostDiagnostics = 200;

export class Findings {
  private readonly found: Diagnostic[] = [];
  private readonly leftOut: Record<Severity, number> = { error: 0, warning: 0 };

  /** @param advice may be a function where it takes work to find, such as the nearest known name */
  error(code: string, path: string, message: string, advice: string | (() => string)): void {
    this.add('error', code, path, message, advice);
  }

  warning(code: string, path: string, message: string, advice: string | (() => string)): void {
    this.add('warning', code, path, message, advice);
  }

  append(diagnostics: readonly Diagnostic[]): void {
    for (const diagnostic of diagnostics) {
      if (this.isFull) this.leaveOut(diagnostic.severity);
      else this.found.push(diagnostic);
    }
  }

  get isFull(): boolean {
    return this.found.length >= mostDiagnostics;
  }

  /** Counts one that nobody would read any more, so that it need not be worded. */
  leaveOut(severity: Severity): void {
    this.leftOut[severity] += 1;
  }

  get hasErrors(): boolean {
    return this.leftOut.error > 0 || this.found.some(({ severity }) => severity === 'error');
  }

  /** In the order of finding; a last one says how many were left out. */
  get diagnostics(): readonly Diagnostic[] {
    const { error, warning } = this.leftOut;
    if (error + warning === 0) return this.found;
    const rest: Diagnostic = {
      code: 'more-diagnostics',
      severity: error > 0 ? 'error' : 'warning',
      message: `${error + warning} more are not shown.`,
      advice: 'Mend the first ones and check again.',
      path: '',
    };
    return [...this.found, rest];
  }

  private add(
    severity: Severity,
    code: string,
    path: string,
    message: string,
    advice: string | (() => string),
  ): void {
    if (this.isFull) this.leaveOut(severity);
    else this.found.push({ code, severity, message, advice: wordsOf(advice), path });
  }
}

function wordsOf(advice: string | (() => string)): string {
  return typeof advice === 'string' ? advice : advice();
}
