/** Zones as spans of evenly spaced pixels: a straight run is one span, whatever its length. */
import type { Zone, ZoneEntry } from '../../engine/layout/layout.ts';

export interface Span {
  readonly count: number;
  readonly pixel: number;
  readonly pixelStep: number;
  readonly index: number;
  readonly indexStep: number;
}

export interface SpannedZone {
  readonly spans: readonly Span[];
  /** Worn places in the order of the spans, x and y of each pixel. */
  readonly places: readonly number[];
}

/**
 * A zone in as few spans as its own order or the order on the line gives. Each pixel stands in a zone once,
 * so the order in which they are drawn changes nothing; twins come out as runs instead of pairs.
 */
export function spanZone({ entries, places }: Zone): SpannedZone {
  const numbered = entries.map((entry, at) => ({ ...entry, place: [places[at * 2]!, places[at * 2 + 1]!] }));
  const alongLine = [...numbered].sort((a, b) => a.pixel - b.pixel);
  const [own, line] = [spansOf(numbered), spansOf(alongLine)];
  return line.length < own.length
    ? { spans: line, places: alongLine.flatMap(({ place }) => place) }
    : { spans: own, places: numbered.flatMap(({ place }) => place) };
}

/** The entries in their order, going greedily from the first to the last. */
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
