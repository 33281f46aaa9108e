/** Diagnostics as a list to work through: what is wrong, what to do, and where. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';

/** Whoever has more than this to mend begins at the top anyway. */
const mostShown = 60;

export function Findings({ diagnostics }: { diagnostics: readonly Diagnostic[] }) {
  const hiddenCount = diagnostics.length - mostShown;
  return (
    <ol className="findings">
      {diagnostics.slice(0, mostShown).map((diagnostic, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is shown as it came and never reordered
        <li key={index} data-severity={diagnostic.severity} data-code={diagnostic.code}>
          <p>
            <b>{diagnostic.message}</b> {diagnostic.advice}
          </p>
          <p className="place">{placeOf(diagnostic)}</p>
        </li>
      ))}
      {hiddenCount > 0 && <li className="more">and {hiddenCount} more</li>}
    </ol>
  );
}

/** `line 12, column 5, looks[0].name`, as far as it is known. */
export function placeOf({ path, span, inFile }: Diagnostic): string {
  const where = inFile ?? span;
  const line = where === undefined ? '' : `line ${where.line}, column ${where.column}`;
  return [line, path ?? ''].filter((part) => part !== '').join(', ');
}
