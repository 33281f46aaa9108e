/** Columns of a cloth in the order in which their pixels lie, for zones whose wiring jumps about. */

/**
 * The same pixels, along the longer side of the box they fill: from left to right, or from the top down.
 * @param places x and y (up) of each pixel of the piece
 */
export function orderedByPlace(columns: Uint16Array, places: Float32Array): Uint16Array {
  const x = (pixel: number) => places[2 * pixel]!;
  const y = (pixel: number) => -places[2 * pixel + 1]!;
  const along = spread(columns, x) >= spread(columns, y) ? x : y;
  return columns.slice().sort((a, b) => along(a) - along(b) || a - b);
}

function spread(columns: Uint16Array, of: (pixel: number) => number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const pixel of columns) {
    low = Math.min(low, of(pixel));
    high = Math.max(high, of(pixel));
  }
  return high - low;
}
