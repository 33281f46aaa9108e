/** How strip is sold: so many pixels on a metre. Common practice, no source. */

export const densities = [30, 60, 96, 144] as const;
export type Density = (typeof densities)[number];

/** Millimetres from pixel to pixel, to a micrometre, which is finer than any reel. */
export function pitchAt(density: number): number {
  return Math.round(1e6 / density) / 1000;
}

/** The density that a pitch is sold as, if it is one: rulers and files round a little. */
export function densityOf(pitchMillimetres: number): Density | undefined {
  return densities.find((density) => Math.abs((pitchMillimetres * density) / 1000 - 1) < 0.004);
}
