/** Lengths and runs in words. */
import type { Run } from '../../../engine/piece/schema.ts';
import { placesOf } from './surface/places.ts';

/** `8.3 mm`, `483 mm`, `1.25 m`. */
export function lengthWords(millimetres: number): string {
  const size = Math.abs(millimetres);
  if (size >= 1000) return `${Number((millimetres / 1000).toFixed(2))} m`;
  return `${Number(millimetres.toFixed(size < 100 ? 1 : 0))} mm`;
}

/** `-15°`, `22.5°`: counter-clockwise. */
export function degreeWords(degrees: number): string {
  return `${Number(degrees.toFixed(1)) + 0}°`;
}

export const shapeWords = {
  straight: 'strip',
  ring: 'ring',
  arc: 'arc',
  grid: 'grid',
  path: 'path',
  points: 'single pixels',
} as const satisfies Record<Run['flat']['kind'], string>;

export function pixelWords(count: number): string {
  return count === 1 ? '1 pixel' : `${count} pixels`;
}

/** `ring, 64 pixels`. */
export function runWords(run: Run): string {
  return `${shapeWords[run.flat.kind]}, ${pixelWords(placesOf(run.flat).length)}`;
}
