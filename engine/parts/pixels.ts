/** Pixel parts by part number. */
export const pixelPartNames = ['ws2812b'] as const;
export type PixelPartName = (typeof pixelPartNames)[number];

export interface PixelPart {
  readonly channels: 3 | 4;
  /** Position in the data of red, green, blue (and white): byte order[c] of a pixel is channel c. */
  readonly order: readonly number[];
  /** Each channel at full drive, in tenths of a milliamp. */
  readonly channelTenths: readonly number[];
  /** A dark pixel, in tenths of a milliamp. */
  readonly quiescentTenths: number;
  readonly sources: readonly string[];
}

export const pixelParts: Record<PixelPartName, PixelPart> = {
  ws2812b: {
    channels: 3,
    order: [1, 0, 2],
    channelTenths: [200, 200, 200],
    quiescentTenths: 7,
    sources: [
      'Order green, red, blue: WS2812B datasheet, composition of 24 bit data',
      '20 mA a channel: LED table of the WS2812 datasheet; newer dies draw 12 to 18 mA, so this errs on the safe side',
      'Quiescent 0.6 to 1.0 mA: not in the old datasheet; 0.62 and 0.7 mA by independent measurement',
    ],
  },
};
