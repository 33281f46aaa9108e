/** The door through which a piece comes in: whole and checked, or not at all. */
import type { core, z } from 'zod';
import type { Checked, Diagnostic, Span } from '../diagnostic.ts';
import { bounded } from './bounds.ts';
import { Findings } from './findings.ts';
import { explain, issueText } from './issues.ts';
import { type JsonText, readJson } from './json.ts';
import { migrate } from './migrate.ts';
import { placeOfPath, TextLines } from './places.ts';
import { type Piece, pieceSchema } from './schema.ts';
import { validate } from './validate.ts';

/**
 * The piece of a file's text, or everything that is wrong with it. Each diagnostic has a path, and in
 * `inFile` the line and column of the value there, or of what stands around a missing one.
 */
export function loadPiece(text: string): Checked<Piece> {
  const json = readJson(text);
  if (json.value === undefined) return json;
  const checked = checkPiece(json.value.value);
  return { ...checked, diagnostics: placed(checked.diagnostics, json.value, text) };
}

/** The same for data that is already parsed, such as a piece that a program or the page has edited. */
export function checkPiece(data: unknown): Checked<Piece> {
  const unbounded = bounded(data);
  if (unbounded.length > 0) return { diagnostics: unbounded };
  const migrated = migrate(data);
  if (migrated.value === undefined) return { diagnostics: migrated.diagnostics };
  const findings = new Findings();
  const parsed = parse(migrated.value);
  if (parsed === undefined) findings.error('too-many-faults', '', ...tooManyFaults);
  else if (parsed.success) validate(parsed.data, findings);
  else explainAll(parsed.error.issues, findings);
  const { diagnostics } = findings;
  if (parsed?.data === undefined || findings.hasErrors) return { diagnostics };
  return { value: parsed.data, diagnostics };
}

const tooManyFaults = [
  'The file has tens of thousands of faults.',
  'See whether it is a piece file at all.',
] as const;

/** zod passes issues on as the arguments of one call: some hundred thousand of them exhaust the stack. */
function parse(data: unknown): z.ZodSafeParseResult<Piece> | undefined {
  try {
    return pieceSchema.safeParse(data, { reportInput: true, error: issueText });
  } catch (fault) {
    if (fault instanceof RangeError) return undefined;
    throw fault;
  }
}

function explainAll(issues: readonly core.$ZodIssue[], findings: Findings): void {
  for (const issue of issues) {
    if (findings.isFull) findings.leaveOut('error');
    else findings.append(explain(issue));
  }
}

/** Each with its place in the text, and in that order; what concerns the whole file comes last. */
function placed(diagnostics: readonly Diagnostic[], json: JsonText, text: string): Diagnostic[] {
  const lines = new TextLines(text);
  const inOrder = diagnostics.map((diagnostic) => {
    const place = placeOfPath(json.value, json.places, diagnostic.path ?? '');
    const inFile: Span = lines.span(...(place ?? [0, 0]));
    return { order: place?.[0] ?? text.length, diagnostic: { ...diagnostic, inFile } };
  });
  return inOrder.sort((a, b) => a.order - b.order).map(({ diagnostic }) => diagnostic);
}
