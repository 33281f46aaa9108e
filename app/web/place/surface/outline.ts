/** Runs as paths in millimetres: one path a run, however many pixels it has. */

import { pitchOf } from '../../../../engine/edit/geometry/pitch.ts';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { placesOf, shapeOn } from './places.ts';

export interface Outline {
  /** Zero-length strokes, which round caps make into dots. */
  readonly dots: string;
  readonly hiddenDots: string;
  /** The strip from pixel to pixel. */
  readonly way: string;
  readonly pitch: number;
}

const known = { flat: new WeakMap<Run, Outline>(), worn: new WeakMap<Run, Outline>() };

export function outlineOf(run: Run, side: Side): Outline {
  let outline = known[side].get(run);
  if (outline === undefined) {
    outline = drawn(run, side);
    known[side].set(run, outline);
  }
  return outline;
}

function drawn(run: Run, side: Side): Outline {
  const shape = shapeOn(run, side);
  const places = placesOf(shape);
  const [removed, hidden] = [new Set(run.removed), new Set(run.hidden)];
  const lit = places.filter((_, i) => !removed.has(i) && !hidden.has(i));
  const dark = places.filter((_, i) => !removed.has(i) && hidden.has(i));
  return {
    dots: dotsPath(lit),
    hiddenDots: dotsPath(dark),
    way: wayPath(places) + (shape.kind === 'ring' ? 'Z' : ''),
    pitch: pitchOf(shape) ?? 16,
  };
}

export function dotsPath(places: readonly Point[]): string {
  return places.map((place) => `M${spot(place)}h0`).join('');
}

export function wayPath(places: readonly Point[]): string {
  // A single pixel is a way of no length, which a round cap still shows.
  return places.length === 1 ? dotsPath(places) : `M${places.map(spot).join('L')}`;
}

/** To a hundredth of a millimetre, as files of a thousand pixels should stay short. */
function spot({ x, y }: Point): string {
  return `${Number(x.toFixed(2))} ${Number(y.toFixed(2))}`;
}
