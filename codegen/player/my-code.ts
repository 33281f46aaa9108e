/** The one place of a sketch that belongs to the maker. A new generation brings its content along. */
import type { Diagnostic } from '../../engine/diagnostic.ts';

const begins = '// >>> my code';
const ends = '// <<< my code';

/** `look`: identifier of some look, for the example. */
export function printMyCode(body: string, look: string): string {
  return `// Runs once in every pass of loop(); keep it short, and without delay(). You may read \`shown\` and call
// enter_look(${look}). What stands between the two marks is kept when the sketch is made anew.
static void my_code() {
  ${begins}
${body}  ${ends}
}
`;
}

/** What a maker wrote in an older sketch: whole lines, or nothing. */
export function myCodeOf(previous: string | undefined): { body: string; diagnostics: Diagnostic[] } {
  if (previous === undefined) return { body: '', diagnostics: [] };
  const lines = previous.replace(/\r\n?/g, '\n').split('\n');
  const first = lines.findIndex((line) => line.trim() === begins);
  const last = lines.findIndex((line, at) => at > first && line.trim() === ends);
  if (first >= 0 && last >= 0) {
    const body = lines.slice(first + 1, last).map((line) => `${line}\n`);
    return { body: body.join(''), diagnostics: [] };
  }
  return {
    body: '',
    diagnostics: [
      {
        code: 'my-code-not-found',
        severity: 'warning',
        message: 'The older sketch has no marks around my_code(), so nothing was taken over from it.',
        advice: `Put your own lines between "${begins}" and "${ends}" in the new sketch.`,
      },
    ],
  };
}
