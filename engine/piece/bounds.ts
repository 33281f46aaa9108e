/**
 * A first look at data of any size and shape, before anything recursive touches it: no more values, no
 * deeper, no longer lists than a piece can have. Text is bounded while it is read; this is for data.
 */
import { type Diagnostic, pathText } from '../diagnostic.ts';
import { jsonLimits } from './json-limits.ts';
import { limits } from './limits.ts';

/** Longer than any list or set of fields that the schema allows. */
const longest = Math.max(limits.pixels, limits.clips);

interface Visit {
  readonly value: object;
  readonly key: PropertyKey;
  readonly around: Visit | undefined;
  readonly depth: number;
}

/** What is out of bounds, or nothing. Needs no stack and little time, also for data with cycles. */
export function bounded(data: unknown): Diagnostic[] {
  if (typeof data !== 'object' || data === null) return [];
  const found: Diagnostic[] = [];
  const open: Visit[] = [{ value: data, key: '', around: undefined, depth: 1 }];
  let values = 0;
  for (let visit = open.pop(); visit !== undefined; visit = open.pop()) {
    const { value, depth } = visit;
    const keys = Array.isArray(value) ? undefined : Object.keys(value);
    const length = keys === undefined ? (value as unknown[]).length : keys.length;
    values += Math.min(length, longest);
    if (values > jsonLimits.values) {
      found.push(
        outOf(
          'file-too-large',
          visit,
          'The piece holds more than 250,000 values.',
          'Split it, or thin out its keyframes.',
        ),
      );
    } else if (depth > jsonLimits.depth) {
      found.push(
        outOf(
          'too-deep',
          visit,
          `Brackets nest more than ${jsonLimits.depth} deep.`,
          'Remove the inner ones.',
        ),
      );
    } else if (length > longest) {
      const message = `This holds ${length} entries, but nothing in a piece has more than ${longest}.`;
      found.push(outOf('too-long', visit, message, 'Shorten it, or split the piece.'));
    } else if (keys?.includes('__proto__')) {
      found.push(outOf('key-forbidden', visit, 'The name "__proto__" is not allowed.', 'Remove this field.'));
    } else {
      for (let i = length - 1; i >= 0; i--) {
        const key = keys?.[i] ?? i;
        const inner = (value as Record<PropertyKey, unknown>)[key];
        if (typeof inner !== 'object' || inner === null) continue;
        open.push({ value: inner, key, around: visit, depth: depth + 1 });
      }
      continue;
    }
    if (values > jsonLimits.values || found.length >= jsonLimits.faults) break;
  }
  return found;
}

function outOf(code: string, visit: Visit, message: string, advice: string): Diagnostic {
  const keys: PropertyKey[] = [];
  for (let at: Visit | undefined = visit; at?.around !== undefined; at = at.around) keys.unshift(at.key);
  return { code, severity: 'error', message, advice, path: pathText(keys) };
}
