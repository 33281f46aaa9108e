/** Edits of a gradient's stops; they stay sorted by place. */
import type { GradientStops } from '../../../engine/piece/schema.ts';
import { between } from './colour.ts';

/** The schema's bound. */
export const mostStops = 16;
const step = 1000;

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

/** The same picture in CSS: sRGB interpolation is per channel on levels, as pixels mix. */
export function gradientCss(stops: GradientStops): string {
  const list = stops.map(({ at, colour }) => `${colour} ${at * 100}%`);
  return `linear-gradient(90deg, ${list.length > 1 ? list.join(', ') : `${stops[0]!.colour} 0 100%`})`;
}
