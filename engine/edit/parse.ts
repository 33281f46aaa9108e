/** Reads edits that come from outside: from a saved history, or from a form that lets anything be typed. */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import { Findings } from '../piece/findings.ts';
import { explain, issueText } from '../piece/issues.ts';
import type { z } from '../piece/schema/zod.ts';
import { type Edit, editSchema } from './edit.ts';

/** The edit with its names normalised; or what is wrong with it, at paths that begin with `edit`. */
export function parseEdit(data: unknown): Checked<Edit> {
  return parseAs(editSchema, data, 'edit');
}

/** Data of any origin as a schema has it; or what is wrong, at paths that begin with a word for it. */
export function parseAs<T>(schema: z.ZodType<T>, data: unknown, word: string): Checked<T> {
  const findings = new Findings();
  try {
    const parsed = schema.safeParse(data, { reportInput: true, error: issueText });
    if (parsed.success) return { value: parsed.data, diagnostics: [] };
    for (const issue of parsed.error.issues) findings.append(explain(issue, [word]));
  } catch (fault) {
    // zod passes issues on as the arguments of one call: some hundred thousand of them exhaust the stack.
    if (!(fault instanceof RangeError)) throw fault;
    return { diagnostics: [tooManyFaults] };
  }
  return { diagnostics: findings.diagnostics };
}

const tooManyFaults: Diagnostic = {
  code: 'too-many-faults',
  severity: 'error',
  message: 'This has tens of thousands of faults.',
  advice: 'See whether it is what it should be at all.',
};
