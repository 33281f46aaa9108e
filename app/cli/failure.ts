/** How a command ends early: caught in one place, which tells it as text or as JSON. */
import type { Diagnostic } from '../../engine/diagnostic.ts';
import { type ExitCode, exitCodes } from './terminal.ts';

export interface FiledDiagnostic extends Diagnostic {
  /** As it was named on the command line. */
  readonly file?: string;
}

export class Failure extends Error {
  readonly exitCode: ExitCode;
  readonly diagnostics: readonly FiledDiagnostic[];

  constructor(exitCode: ExitCode, diagnostics: readonly FiledDiagnostic[]) {
    super(diagnostics.map(({ message }) => message).join(' '));
    this.exitCode = exitCode;
    this.diagnostics = diagnostics;
  }
}

/** The command line itself is wrong. */
export function wrongUsage(code: string, message: string, advice: string): Failure {
  return new Failure(exitCodes.wrongUsage, [{ code, severity: 'error', message, advice }]);
}

/** A piece, or what was made of it, is wrong. */
export function faulty(diagnostics: readonly FiledDiagnostic[]): Failure {
  return new Failure(exitCodes.faulty, diagnostics);
}
