/** What an edit comes to. */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import type { Piece } from '../piece/schema.ts';
import type { Edit } from './edit.ts';

export interface Applied {
  readonly piece: Piece;
  /** Applied to `piece`, it gives back the piece before. */
  readonly inverse: Edit;
}

export type Outcome = Checked<Applied>;

/** No value, and the reason. */
export interface Refusal {
  readonly value?: undefined;
  readonly diagnostics: readonly Diagnostic[];
}

export function done(piece: Piece, inverse: Edit): Outcome {
  return found({ piece, inverse });
}

export function found<T>(value: T): Checked<T> & { readonly value: T } {
  return { value, diagnostics: [] };
}

export function refused(code: string, message: string, advice: string): Refusal {
  return { diagnostics: [{ code, severity: 'error', message, advice }] };
}

/** Goes on with a value that is there, or hands on why it is not. */
export function given<T, Next>(checked: Checked<T>, next: (value: T) => Checked<Next>): Checked<Next> {
  return checked.value === undefined ? { diagnostics: checked.diagnostics } : next(checked.value);
}
