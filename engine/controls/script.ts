/**
 * Press scripts: what somebody does with the buttons, one step after another, split by `;` or new lines.
 *
 *   MS down [BUTTON]    the contact closes
 *   MS up [BUTTON]      the contact opens
 *   MS end              the script ends after this millisecond
 *
 * A step at millisecond m is felt in the player's step m; one at 0 in its first. Without a name, the
 * first button of the piece is meant.
 */
import type { Checked, Diagnostic, Span } from '../diagnostic.ts';
import type { Piece } from '../piece/schema.ts';

export interface PressScript {
  /** In order of time. */
  readonly contacts: readonly Contact[];
  readonly endMs: number;
}

export interface Contact {
  readonly ms: number;
  /** Index in the piece's buttons. */
  readonly button: number;
  readonly down: boolean;
}

/** Two days: a night out and more, played in a few seconds. */
export const longestScriptMs = 48 * 3600 * 1000;

const stepForm = /^(?<ms>\d+)\s+(?:(?<end>end)|(?<level>down|up)(?:\s+(?<button>.+))?)$/;

interface Step {
  readonly text: string;
  readonly span: Span;
}

export function parseScript(text: string, piece: Piece): Checked<PressScript> {
  const diagnostics: Diagnostic[] = [];
  const fault = (code: string, message: string, advice: string, span: Span) =>
    diagnostics.push({ code, severity: 'error', message, advice, span });

  const steps = splitSteps(text);
  const contacts: Contact[] = [];
  let endMs: number | null = null;
  let lastMs = 0;
  for (const { text: step, span } of steps) {
    const parts = stepForm.exec(step)?.groups;
    if (!parts) {
      fault(
        'script-step-unreadable',
        `"${step}" is no step of a script.`,
        'Write MS down, MS up or MS end, with a button after down or up if it is not the first.',
        span,
      );
      continue;
    }
    const ms = Number(parts.ms);
    if (endMs !== null) {
      fault('script-after-end', `"${step}" comes after the end.`, 'Let the script end with its end.', span);
    } else if (ms > longestScriptMs) {
      fault('script-too-long', `${ms} ms is more than two days.`, 'Keep a script within 172800000 ms.', span);
    } else if (ms < lastMs) {
      fault('script-order', `${ms} ms comes after ${lastMs} ms.`, 'Sort the steps by time.', span);
    } else if (parts.end) {
      endMs = ms;
    } else {
      const button = indexOfButton(piece, parts.button);
      if (button < 0) fault('script-unknown-button', ...unknownButton(piece, parts.button), span);
      contacts.push({ ms, button, down: parts.level === 'down' });
    }
    lastMs = Math.max(lastMs, ms);
  }
  if (endMs === null && diagnostics.length === 0) {
    const span = steps.at(-1)?.span ?? { start: 0, end: 0, line: 1, column: 1 };
    fault('script-without-end', 'The script has no end.', 'Add a last step, such as 5000 end.', span);
  }
  return endMs === null || diagnostics.length > 0
    ? { diagnostics }
    : { value: { contacts, endMs }, diagnostics };
}

function indexOfButton(piece: Piece, name: string | undefined): number {
  const { buttons } = piece.controls;
  if (name === undefined) return buttons.length > 0 ? 0 : -1;
  return buttons.findIndex((button) => button.name === name.normalize('NFC'));
}

function unknownButton(piece: Piece, name: string | undefined): [message: string, advice: string] {
  const names = piece.controls.buttons.map((button) => `"${button.name}"`);
  return [
    name === undefined ? 'The piece has no button.' : `There is no button "${name}".`,
    names.length > 0 ? `Use one of ${names.join(', ')}.` : 'Give the piece a button first.',
  ];
}

/** Steps without the space around them, each with its place; empty ones are left out. */
function splitSteps(text: string): Step[] {
  const steps: Step[] = [];
  let line = 1;
  let lineStart = 0;
  for (const { 0: piece, index } of text.matchAll(/[^;\n]+|\n/g)) {
    if (piece === '\n') {
      line += 1;
      lineStart = index + 1;
      continue;
    }
    const step = piece.trim();
    if (step === '') continue;
    const start = index + piece.indexOf(step);
    steps.push({
      text: step,
      span: { start, end: start + step.length, line, column: start - lineStart + 1 },
    });
  }
  return steps;
}
