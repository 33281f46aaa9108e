/** Where the values of a JSON text stand, so that a diagnostic can point at a line and a column. */
import type { Span } from '../diagnostic.ts';

/** Start and end of each child, by the container and the key in it. */
export type JsonPlaces = Map<object, ReadonlyMap<string | number, readonly [start: number, end: number]>>;

/** Finds lines and columns; both count from 1, columns in UTF-16 units as editors do. */
export class TextLines {
  private readonly text: string;
  private starts: number[] | undefined;

  constructor(text: string) {
    this.text = text;
  }

  span(start: number, end: number): Span {
    this.starts ??= lineStarts(this.text);
    let low = 0;
    let high = this.starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.starts[middle]! <= start) low = middle;
      else high = middle;
    }
    return { start, end, line: low + 1, column: start - this.starts[low]! + 1 };
  }
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/**
 * Start and end of the value at a path such as `looks[0].name`, or of the innermost value around it
 * that the file has: what is missing is shown where it is missing.
 */
export function placeOfPath(
  root: unknown,
  places: JsonPlaces,
  path: string,
): readonly [start: number, end: number] | undefined {
  let value = root;
  let place: readonly [number, number] | undefined;
  for (const key of path.match(/[^.[\]]+/g) ?? []) {
    const children = typeof value === 'object' && value !== null ? places.get(value) : undefined;
    const child = children?.get(key) ?? children?.get(Number(key));
    if (child === undefined) break;
    place = child;
    value = (value as Record<string, unknown>)[key];
  }
  return place;
}
