/** What can be wrong with a JSON text, in words for a maker. `%` stands for the piece of text meant. */
import type { Diagnostic, Span } from '../diagnostic.ts';

interface Fault {
  /** `json-syntax` where it is left out. */
  readonly code?: string;
  readonly message: string;
  readonly advice: string;
}

const faults = {
  'too-many-characters': {
    code: 'file-too-large',
    message: 'The file is longer than % characters.',
    advice: 'Keep pictures outside of it.',
  },
  'too-many-values': {
    code: 'file-too-large',
    message: 'The file holds more than % values.',
    advice: 'Split the piece, or thin out its keyframes.',
  },
  'too-deep': {
    code: 'too-deep',
    message: 'Brackets nest more than % deep.',
    advice: 'No part of a piece needs that; remove the inner ones.',
  },
  'key-twice': {
    code: 'key-twice',
    message: 'The field "%" stands twice in the same braces.',
    advice: 'Remove one of the two.',
  },
  'key-forbidden': {
    code: 'key-forbidden',
    message: 'The name "%" is not allowed.',
    advice: 'Remove this field.',
  },
  'key-expected': {
    message: 'The name of a field is expected here.',
    advice: 'Write it in double quotes: "name": ...',
  },
  'comma-before-brace': {
    message: 'A comma stands in front of the closing brace.',
    advice: 'Remove the comma.',
  },
  'colon-expected': {
    message: 'A colon is expected behind the name of a field.',
    advice: 'Write "name": value.',
  },
  'comma-expected': {
    message: 'A comma or % is expected here.',
    advice: 'Put a comma between two values, and close what is open.',
  },
  'left-open': {
    message: 'The file ends, but % is still open.',
    advice: 'See whether the rest of it is missing.',
  },
  'behind-the-end': {
    message: 'Something stands behind the end of the piece.',
    advice: 'Remove it, or a bracket that closes too early.',
  },
  'ends-early': {
    message: 'The file ends where a value is expected.',
    advice: 'See whether the rest of it is missing.',
  },
  'value-missing': {
    message: 'A value is expected in front of this bracket.',
    advice: 'Remove the comma, or write the missing value.',
  },
  'value-expected': {
    message: 'A value is expected here.',
    advice: 'Write a number, text in double quotes, true, false, [ or {.',
  },
  'unknown-word': {
    message: 'The word % has no meaning here.',
    advice: 'Write text in double quotes.',
  },
  'single-quotes': {
    message: 'Text stands in double quotes.',
    advice: 'Write "..." and not single quotes.',
  },
  comment: {
    message: 'JSON has no comments.',
    advice: 'Remove this one.',
  },
  'unclosed-text': {
    message: 'This text has no closing quote on its line.',
    advice: 'Close it; a line break inside of text is written \\n.',
  },
  'control-character': {
    message: 'A control character stands inside of text.',
    advice: 'Remove it; a tab is written \\t.',
  },
  'unknown-escape': {
    message: 'This is no escape that JSON knows.',
    advice: 'Double the backslash to mean one.',
  },
} satisfies Record<string, Fault>;

export type FaultName = keyof typeof faults;

export function faultDiagnostic(name: FaultName, span: Span, shown: string): Diagnostic {
  const fault: Fault = faults[name];
  return {
    code: fault.code ?? 'json-syntax',
    severity: 'error',
    message: fault.message.replace('%', () => shown),
    advice: fault.advice,
    path: '',
    span,
  };
}
