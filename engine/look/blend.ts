/** Blend modes by the names of W3C Compositing and Blending, on 8 bit levels. */
export const blendNames = ['normal', 'multiply', 'screen', 'darken', 'lighten', 'plus-lighter'] as const;
export type BlendName = (typeof blendNames)[number];

/** a * b where 255 stands for one: 0 and 255 are exact on either side. The order of a and b matters by one step. */
export function unitMul(a: number, b: number): number {
  return (a * b + a) >> 8;
}

/**
 * From d (a = 0) to s (a = 255), both exact, never outside the two.
 * The largest intermediate is 65535, so a chip computes it in 16 bits.
 */
export function unitMix(d: number, s: number, a: number): number {
  return (d * (256 - a) + s * (a + 1)) >> 8;
}

/** One channel: backdrop d, source s, opacity a, all 0..255. */
export type Blend = (d: number, s: number, a: number) => number;

export const blends: Record<BlendName, Blend> = {
  normal: unitMix,
  multiply: (d, s, a) => unitMix(d, unitMul(d, s), a),
  screen: (d, s, a) => unitMix(d, 255 - unitMul(255 - d, 255 - s), a),
  darken: (d, s, a) => unitMix(d, Math.min(d, s), a),
  lighten: (d, s, a) => unitMix(d, Math.max(d, s), a),
  'plus-lighter': (d, s, a) => Math.min(255, d + unitMul(s, a)),
};
