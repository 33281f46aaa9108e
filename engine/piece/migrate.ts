/**
 * Older piece files are brought up to the newest version step by step. Step n turns version n into
 * version n + 1. A shipped step never changes.
 */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import { nearest } from './nearest.ts';

export interface MigrationStep {
  /** The version that the step reads; it writes the next one. */
  readonly from: number;
  /** Total: gets whatever a file of that version may hold, checked or not, and never throws. */
  readonly migrate: (data: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

export const migrationSteps: readonly MigrationStep[] = numbered([
  // Version 2 has paths among the shapes. All that a file could say before means the same in it.
  { from: 1, migrate: (data) => ({ ...data }) },
]);

/** The version that `pieceSchema` describes. */
export const newestVersion = migrationSteps.length + 1;

/**
 * The same steps, once it is sure that they are numbered 1, 2, 3 and so on.
 * @throws RangeError for a gap or a wrong order: a slip of ours, found when the module loads
 */
export function numbered(steps: readonly MigrationStep[]): readonly MigrationStep[] {
  for (const [index, step] of steps.entries()) {
    if (step.from !== index + 1) {
      throw new RangeError(
        `migration step at index ${index} must read version ${index + 1}, not ${step.from}`,
      );
    }
  }
  return steps;
}

/** Data of any known version as data of the newest; `version` itself is set by the steps' number. */
export function migrate(data: unknown, steps: readonly MigrationStep[] = migrationSteps): Checked<unknown> {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return refused(
      'wrong-type',
      'A piece file is one object.',
      'Begin it with { and the fields "version" and "name".',
      '',
    );
  }
  const piece = data as Record<string, unknown>;
  const { version } = piece;
  const newest = steps.length + 1;
  if (version === undefined) {
    const slip = nearest('version', Object.keys(piece));
    const advice =
      slip === undefined ? `Add "version": ${newest}.` : `Write "version" in place of "${slip}".`;
    return refused('missing', 'The field "version" is missing.', advice, 'version');
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refused(
      'version-unknown',
      'There is no such version of the piece file.',
      `The newest is ${newest}.`,
      'version',
    );
  }
  if (version > newest) {
    return refused(
      'version-newer',
      `The file has version ${version}, but this Weftlight reads versions up to ${newest}.`,
      'Open it with a newer Weftlight.',
      'version',
    );
  }
  let migrated = piece;
  for (const step of steps.slice(version - 1)) {
    migrated = { ...step.migrate(migrated), version: step.from + 1 };
  }
  return { value: migrated, diagnostics: [] };
}

function refused(code: string, message: string, advice: string, path: string): { diagnostics: Diagnostic[] } {
  return { diagnostics: [{ code, severity: 'error', message, advice, path }] };
}
