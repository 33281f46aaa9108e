/** Which run of the piece a hand means when it is somewhere over the picture. */
import type { PieceView } from '../worker/protocol.ts';
import { fitPlaces } from './fit.ts';

export interface RunMeant {
  /** Rank on the line. */
  readonly run: number;
  /** Its pixels in wire order. */
  readonly pixels: readonly number[];
}

/**
 * The run of the pixel nearest to a point of the picture; null where nothing can light up.
 * @param width and height of the picture, x and y (down) of the point, in the same units
 */
export function nearestRun(
  { places, hidden, runs }: Pick<PieceView, 'places' | 'hidden' | 'runs'>,
  { width, height }: { readonly width: number; readonly height: number },
  x: number,
  y: number,
): RunMeant | null {
  const { spots } = fitPlaces(places, width, height);
  let nearest = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let pixel = 0; pixel < hidden.length; pixel++) {
    const distance = Math.hypot(spots[2 * pixel]! - x, spots[2 * pixel + 1]! - y);
    if (hidden[pixel] === 1 || distance >= least) continue;
    nearest = pixel;
    least = distance;
  }
  if (nearest < 0) return null;
  const run = runs[nearest]!;
  const pixels = [...runs.keys()].filter((pixel) => runs[pixel] === run);
  return { run, pixels };
}

/** The pixel nearest to a point of the picture, hidden ones too; null if there is none within reach. */
export function nearestPixel(spots: Float32Array, x: number, y: number, reach: number): number | null {
  let nearest: number | null = null;
  let least = reach;
  for (let pixel = 0; pixel < spots.length / 2; pixel++) {
    const distance = Math.hypot(spots[2 * pixel]! - x, spots[2 * pixel + 1]! - y);
    if (distance > least) continue;
    nearest = pixel;
    least = distance;
  }
  return nearest;
}
