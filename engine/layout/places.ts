/** Worn places as patterns see them: relative to the zone that they play on. */
import type { Pixel, Zone } from './layout.ts';

/** 1.0 in Q2.14: the edge of the zone's bounding box on its longer side. */
const edge = 16384;

/**
 * Two Q2.14 numbers an entry, x then y: 0 at the centre of the zone's bounding box, -1 .. 1 on its
 * longer side, y up. All 0 if the box is a point.
 */
export function zonePlaces(entries: Zone['entries'], pixels: readonly Pixel[]): Int16Array {
  const worn = entries.map(({ pixel }) => pixels[pixel]!.worn);
  const width = spanOf(worn.map(({ x }) => x));
  const height = spanOf(worn.map(({ y }) => y));
  const half = Math.max(width.high - width.low, height.high - height.low) / 2;
  const places = new Int16Array(entries.length * 2);
  if (!(half > 0)) return places;
  for (const [k, { x, y }] of worn.entries()) {
    places[2 * k] = Math.round(((x - (width.low + width.high) / 2) / half) * edge);
    places[2 * k + 1] = Math.round(((y - (height.low + height.high) / 2) / half) * edge);
  }
  return places;
}

function spanOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, high };
}
