/** Blend modes by the names of W3C Compositing and Blending, on 8 bit levels. */
export const blendNames = ['normal', 'multiply', 'screen', 'darken', 'lighten', 'plus-lighter'] as const;
export type BlendName = (typeof blendNames)[number];
