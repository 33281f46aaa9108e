/** Reading a gradient: which segment, how far through it, and the colour there. */
import type { GradientStops } from '../piece/schema.ts';

/**
 * A gradient made ready. Segment s runs from position[s] to position[s + 1]; colours are Q2.14, three
 * per stop. The first stop stands at 0 and the last at 16384: the outer colours reach the edges.
 */
export interface GradientTable {
  readonly name: string;
  /** Q2.14, 0..16384, never falling. At least two. */
  readonly position: Int16Array;
  /** floor(2^30 / width) of each segment, 0 where the width is 0; one less than there are positions. */
  readonly inverse: Int32Array;
  readonly colour: Int16Array;
}

/** A level 0..255 as Q2.14: round(level * 16384 / 255). */
export const levelToLowp = (level: number) => Math.round((level * 16384) / 255);

/** `#rrggbb` as three levels. */
export function levelsOfColour(colour: string): [number, number, number] {
  const value = Number.parseInt(colour.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

export function buildGradient(name: string, stops: GradientStops): GradientTable {
  const points = stops.map(({ at, colour }) => ({ at: Math.round(at * 16384), colour }));
  if (points[0]!.at > 0) points.unshift({ at: 0, colour: points[0]!.colour });
  // The last of several stops at 1 wins as well: a segment begins with it.
  const endsAbruptly = points.at(-1)!.at === points.at(-2)?.at;
  if (points.at(-1)!.at < 16384 || points.length === 1 || endsAbruptly)
    points.push({ at: 16384, colour: points.at(-1)!.colour });
  const position = Int16Array.from(points, ({ at }) => at);
  const inverse = Int32Array.from({ length: points.length - 1 }, (_, s) => {
    const width = position[s + 1]! - position[s]!;
    return width === 0 ? 0 : Math.floor(2 ** 30 / width);
  });
  const colour = Int16Array.from(points.flatMap(({ colour: text }) => levelsOfColour(text).map(levelToLowp)));
  return { name, position, inverse, colour };
}

/** The last segment that begins at or before x; x is Q2.14, 0..16384. */
export function gradientSegment({ position, inverse }: GradientTable, x: number): number {
  let segment = inverse.length - 1;
  while (segment > 0 && position[segment]! > x) segment--;
  return segment;
}

/** How far x has come through its segment, Q2.14, 0..16384. */
export function gradientPart({ position, inverse }: GradientTable, x: number, segment: number): number {
  // x lies inside the segment and the inverse is 2^30 / width, so the product is at most 2^30.
  return ((x - position[segment]!) * inverse[segment]!) >> 16;
}

/** One channel, Q2.14. */
export function gradientColour(
  { colour }: GradientTable,
  channel: number,
  segment: number,
  part: number,
): number {
  const from = colour[segment * 3 + channel]!;
  return from + (((colour[segment * 3 + 3 + channel]! - from) * part) >> 14);
}
