/** How many values a piece holds in all, so that no edit makes one that could not be opened again. */
import type { Findings } from '../../piece/findings.ts';
import { jsonLimits } from '../../piece/json-limits.ts';
import type { Piece } from '../../piece/schema.ts';

/** What has been counted once is not counted again: pieces before and after an edit share nearly all. */
const counted = new WeakMap<object, number>();

function valuesIn(value: object): number {
  let count = counted.get(value);
  if (count === undefined) {
    const inner: unknown[] = Array.isArray(value) ? value : Object.values(value);
    count = inner.length;
    for (const item of inner) if (typeof item === 'object' && item !== null) count += valuesIn(item);
    counted.set(value, count);
  }
  return count;
}

export function checkSize(piece: Piece, findings: Findings): void {
  if (valuesIn(piece) <= jsonLimits.values) return;
  findings.error(
    'file-too-large',
    '',
    'The piece would hold more than 250,000 values.',
    'Split it, or thin out its keyframes.',
  );
}
