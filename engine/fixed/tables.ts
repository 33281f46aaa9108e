/** Tables that are part of a definition: preview and chip read the same numbers. */

const table = (length: number, entry: (i: number) => number) =>
  Int32Array.from({ length }, (_, i) => Math.round(entry(i)));

/** Quarter wave of 128 steps in Q2.14, and one entry more on which the last interpolation may lean. */
export const sineTable = table(130, (i) => 16384 * Math.sin((Math.min(i, 128) / 128) * (Math.PI / 2)));

/** 2^(i/64) in 16.16 for one octave. */
export const powerTable = table(65, (i) => 65536 * 2 ** (i / 64));

/** log2(1 + i/64) in 16.16 for one octave. */
export const logarithmTable = table(65, (i) => 65536 * Math.log2(1 + i / 64));

/** atan(i/64) in 1/65536 of a turn for one eighth of the circle, and one entry more. */
export const angleTable = table(66, (i) => (65536 * Math.atan(Math.min(i, 64) / 64)) / (2 * Math.PI));
