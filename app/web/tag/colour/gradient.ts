/** Edits of a gradient's stops; they stay sorted by place. */

import {
  buildGradient,
  gradientColour,
  gradientPart,
  gradientSegment,
} from '../../../../engine/fixed/gradient.ts';
import type { GradientStops } from '../../../../engine/piece/schema.ts';
import { between } from './mix.ts';

/** The schema's bound. */
export const mostStops = 16;
const step = 1000;
/** 1 in Q2.14. */
const one = 16384;

/** Moves a stop, no further than its neighbours. */
export function moveStop(stops: GradientStops, index: number, at: number): GradientStops {
  const least = stops[index - 1]?.at ?? 0;
  const most = stops[index + 1]?.at ?? 1;
  const place = Math.round(Math.min(most, Math.max(least, at)) * step) / step;
  return stops.map((stop, i) => (i === index ? { ...stop, at: place } : stop));
}

export function colourStop(stops: GradientStops, index: number, colour: string): GradientStops {
  return stops.map((stop, i) => (i === index ? { ...stop, colour } : stop));
}

/** A new stop in the widest gap, of the colour that is there already; tells which one it is. */
export function addStop(stops: GradientStops): { stops: GradientStops; index: number } {
  const edges = [0, ...stops.map((stop) => stop.at), 1];
  let widest = 0;
  for (let gap = 1; gap < edges.length - 1; gap++) {
    if (edges[gap + 1]! - edges[gap]! > edges[widest + 1]! - edges[widest]!) widest = gap;
  }
  const at = Math.round(((edges[widest]! + edges[widest + 1]!) / 2) * step) / step;
  const before = stops[widest - 1] ?? stops[0]!;
  const after = stops[widest] ?? before;
  const colour = between(before.colour, after.colour, 0.5);
  return { stops: [...stops.slice(0, widest), { at, colour }, ...stops.slice(widest)], index: widest };
}

export function removeStop(stops: GradientStops, index: number): GradientStops {
  return stops.length > 1 ? stops.filter((_, i) => i !== index) : stops;
}

/** A new stop at a place, of the colour that is there already; tells which one it is. */
export function addStopAt(stops: GradientStops, wanted: number): { stops: GradientStops; index: number } {
  const at = Math.round(Math.min(1, Math.max(0, wanted)) * step) / step;
  const index = stops.filter((stop) => stop.at <= at).length;
  const before = stops[index - 1] ?? stops[0]!;
  const after = stops[index] ?? before;
  const share = after.at > before.at ? (at - before.at) / (after.at - before.at) : 0;
  const colour = between(before.colour, after.colour, share);
  return { stops: [...stops.slice(0, index), { at, colour }, ...stops.slice(index)], index };
}

/** A hard edge: the next stop comes to where this one is. Undefined for the last, or where there is one. */
export function hardEdge(stops: GradientStops, index: number): GradientStops | undefined {
  const [stop, next] = [stops[index], stops[index + 1]];
  if (stop === undefined || next === undefined || stop.at === next.at) return undefined;
  return stops.map((one, i) => (i === index + 1 ? { ...one, at: stop.at } : one));
}

/** The gradient as the engine mixes it, at evenly spread places from 0 to 1: red, green and blue of each. */
export function gradientLevels(stops: GradientStops, count: number): Uint8ClampedArray<ArrayBuffer> {
  const table = buildGradient('', stops);
  const levels = new Uint8ClampedArray(count * 3);
  for (let place = 0; place < count; place++) {
    const x = Math.round((place / Math.max(1, count - 1)) * one);
    const segment = gradientSegment(table, x);
    const part = gradientPart(table, x, segment);
    // As every pattern's light becomes a level: floor(256 x), and full from one on.
    for (let channel = 0; channel < 3; channel++)
      levels[place * 3 + channel] = gradientColour(table, channel, segment, part) >> 6;
  }
  return levels;
}
