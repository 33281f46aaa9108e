/** Parts with a white die show the share that red, green and blue have in common through it. */

/**
 * The white share of linear light, 0..65280 each: what is to be taken from red, green and blue alike.
 * Only in linear light do the four add up to the colour that was asked for.
 */
export function whiteShare(red: number, green: number, blue: number): number {
  return Math.min(red, green, blue);
}
