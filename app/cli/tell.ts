/** Diagnostics as people like to read them. */
import type { FiledDiagnostic } from './failure.ts';
import type { Terminal } from './terminal.ts';

/** One JSON value and nothing else. */
export function printJson(terminal: Terminal, value: unknown): void {
  terminal.print(`${JSON.stringify(value, null, 2)}\n`);
}

export function diagnosticText(diagnostic: FiledDiagnostic): string {
  const { severity, code, message, advice } = diagnostic;
  const place = placeText(diagnostic);
  const head = place === '' ? `${severity} ${code}` : `${severity} ${code} at ${place}`;
  return `${head}\n  ${message}\n  ${advice}\n`;
}

export function diagnosticsText(diagnostics: readonly FiledDiagnostic[]): string {
  return diagnostics.map(diagnosticText).join('\n');
}

/** `FILE:LINE:COLUMN PATH (line L, column C of the pattern)`, as far as it is known. */
function placeText({ file, path, inFile, span }: FiledDiagnostic): string {
  const line = inFile === undefined ? '' : `:${inFile.line}:${inFile.column}`;
  const parts = [file === undefined ? '' : file + line, path ?? ''];
  if (span !== undefined) {
    // Without a path, the span is in the text that was given itself: a script, or a file that is no JSON.
    const owner = path === undefined || path === '' ? '' : ' of the pattern';
    parts.push(`(line ${span.line}, column ${span.column}${owner})`);
  }
  return parts.filter((part) => part !== '').join(' ');
}
