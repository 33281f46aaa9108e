/** Whether a zone's wiring jumps about, so that its cloth is easier to read as its pixels lie. */

/** A step this many times the usual distance of neighbours is a jump. */
const jump = 3;
/** Between runs a few jumps are usual; where more of the steps than this are jumps, the order says little. */
const mostJumps = 0.25;
/** With fewer pixels than this there is nothing to sort out. */
const fewest = 6;
/** So many pixels tell how far neighbours usually are. */
const mostAsked = 200;

/**
 * @param columns the pixel of each column, as wired
 * @param places x and y of each pixel of the piece
 */
export function isScattered(columns: ArrayLike<number>, places: ArrayLike<number>): boolean {
  if (columns.length < fewest) return false;
  const apart = (a: number, b: number) =>
    Math.hypot(places[2 * a]! - places[2 * b]!, places[2 * a + 1]! - places[2 * b + 1]!);
  const pixels = Array.from(columns);
  const every = Math.ceil(pixels.length / mostAsked);
  const asked = pixels.filter((_, index) => index % every === 0);
  const neighbour = median(asked.map((pixel) => nearest(pixel, pixels, apart)));
  if (neighbour === 0) return false;
  const steps = pixels.slice(1).map((pixel, index) => apart(pixels[index]!, pixel));
  const jumps = steps.filter((step) => step > jump * neighbour).length;
  return jumps > mostJumps * steps.length;
}

function nearest(pixel: number, pixels: readonly number[], apart: (a: number, b: number) => number): number {
  let best = Number.POSITIVE_INFINITY;
  for (const other of pixels) if (other !== pixel) best = Math.min(best, apart(pixel, other));
  return best;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
