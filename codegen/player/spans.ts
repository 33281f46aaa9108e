/** Zones as spans of evenly spaced pixels: a straight run is one span, whatever its length. */
import type { ZoneEntry } from '../../engine/layout/layout.ts';

export interface Span {
  readonly count: number;
  readonly pixel: number;
  readonly pixelStep: number;
  readonly index: number;
  readonly indexStep: number;
}

/** The entries in their order, as few spans as going greedily from the first to the last gives. */
export function spansOf(entries: readonly ZoneEntry[]): Span[] {
  const spans: Span[] = [];
  for (let first = 0; first < entries.length; ) {
    const { pixel, index } = entries[first]!;
    const second = entries[first + 1];
    const pixelStep = second === undefined ? 0 : second.pixel - pixel;
    const indexStep = second === undefined ? 0 : second.index - index;
    let count = 1;
    for (let next = entries[first + count]; next !== undefined; next = entries[first + count]) {
      if (next.pixel !== pixel + count * pixelStep || next.index !== index + count * indexStep) break;
      count++;
    }
    spans.push({ count, pixel, pixelStep, index, indexStep });
    first += count;
  }
  return spans;
}
