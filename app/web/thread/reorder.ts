/** Where a bead comes to lie that is drawn along the thread. */

/**
 * @param centres of all beads before the drag, from left to right
 * @param from the bead that is drawn
 * @param x of its centre now
 * @returns its new place, counted without itself
 */
export function placeAt(centres: readonly number[], from: number, x: number): number {
  return centres.filter((centre, index) => index !== from && centre < x).length;
}

/** How many places a bead makes way while another one is drawn: -1, 0 or 1. */
export function makingWay(index: number, from: number, to: number): number {
  if (from < index && index <= to) return -1;
  if (to <= index && index < from) return 1;
  return 0;
}
