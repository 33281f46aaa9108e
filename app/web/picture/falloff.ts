/** How the light of a pixel fades with the distance from its middle. Chosen by eye on the samples. */

/** Light at a radius: 0 is the middle, 1 the edge, where all have faded. */
export type Falloff = (radius: number) => number;

export const falloffs = {
  /** A hard little disc: the part on its strip. */
  body: (r) => (r < 0.86 ? 1 : Math.max(0, (1 - r) / 0.14)),
  /** Light scattered in fabric and in the eye: bright near the source, with a long tail. */
  halo: (r) => (1 - r) ** 2 / (1 + 14 * r * r),
  /** The lit die and its immediate bloom. */
  core: (r) => Math.exp(-6 * r * r) * (1 - r),
} satisfies Record<string, Falloff>;

export type LayerName = keyof typeof falloffs;

/** A square image of a falloff, one byte a dot, row by row; its edges are dark. */
export function falloffImage(falloff: Falloff, across: number): Uint8Array {
  const image = new Uint8Array(across * across);
  const middle = (across - 1) / 2;
  for (let y = 0; y < across; y++) {
    for (let x = 0; x < across; x++) {
      const radius = Math.hypot(x - middle, y - middle) / middle;
      image[y * across + x] = radius >= 1 ? 0 : Math.round(255 * falloff(radius));
    }
  }
  return image;
}
