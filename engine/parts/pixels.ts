/** Pixel parts by part number. */
export const pixelPartNames = ['ws2812b'] as const;
export type PixelPartName = (typeof pixelPartNames)[number];
