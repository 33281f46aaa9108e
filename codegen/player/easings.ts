/** Easing tables of a sketch. */

/** A linear way needs no table: the share is the part of the time itself, with the same bits. */
export function tableIsLinear(easing: Int32Array): boolean {
  return easing.every((entry, step) => entry === step * 1024);
}
