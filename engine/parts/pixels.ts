/** Pixel parts by part number. */
import type { Source } from './figure.ts';

export const pixelPartNames = ['ws2812b'] as const;
export type PixelPartName = (typeof pixelPartNames)[number];

/** How long the line may be high or low, in nanoseconds. */
export type Window = readonly [min: number, max: number];

export interface PixelPart {
  readonly title: string;
  readonly channels: 3 | 4;
  /** Position in the data of red, green, blue (and white): byte order[c] of a pixel is channel c. */
  readonly order: readonly number[];
  /** Each channel at full drive, in tenths of a milliamp. */
  readonly channelTenths: readonly number[];
  /** A dark pixel, in tenths of a milliamp. */
  readonly quiescentTenths: number;
  readonly supplyVolts: readonly [min: number, max: number];
  /** A high data line needs this share of the supply, a low one at most that. */
  readonly logicHighShare: number;
  readonly logicLowShare: number;
  /** What our sketches keep to: inside of the windows of every revision that sells under this number. */
  readonly wire: {
    readonly zeroHigh: Window;
    readonly zeroLow: Window;
    readonly oneHigh: Window;
    readonly oneLow: Window;
    /** The line must rest this long before the next frame. */
    readonly latchNanoseconds: number;
  };
  readonly sources: readonly Source[];
}

export const pixelParts: Record<PixelPartName, PixelPart> = {
  ws2812b: {
    title: 'WS2812B',
    channels: 3,
    order: [1, 0, 2],
    channelTenths: [200, 200, 200],
    quiescentTenths: 7,
    supplyVolts: [4.5, 5.3],
    logicHighShare: 0.7,
    logicLowShare: 0.3,
    wire: {
      zeroHigh: [250, 380],
      zeroLow: [750, 1000],
      oneHigh: [750, 950],
      oneLow: [300, 420],
      latchNanoseconds: 300_000,
    },
    sources: [
      {
        about: 'order green, red, blue, highest bit first',
        from: 'WS2812B datasheet, composition of 24 bit data',
        verified: 'primary',
      },
      {
        about: '20 mA a channel; newer dies draw 12 to 18 mA, so this errs on the safe side',
        from: 'WS2812 datasheet (six pins), LED table; the WS2812B sheet prints none',
        verified: 'primary',
      },
      {
        about:
          'dark pixel 0.7 mA, the higher of two reports (0.62 and 0.7 mA); the old datasheet prints none',
        from: 'independent measurement and a comparison table of pixel chips',
        verified: 'secondary',
      },
      {
        about: 'supply from 4.5 V (characteristics) to 5.3 V (absolute maximum)',
        from: 'WS2812B datasheet, absolute maximum ratings and electrical characteristics',
        verified: 'primary',
      },
      {
        about: 'high above 0.7, low below 0.3 of the supply',
        from: 'WS2812B datasheet, electrical characteristics',
        verified: 'primary',
      },
      {
        about: 'windows on the wire: 0 code of revisions a and b (400 and 350 +-150, 850 and 900 +-150 ns)',
        from: 'WS2812B datasheet, data transfer time, two issues',
        verified: 'primary',
      },
      {
        about:
          'windows on the wire: high of a zero below 380 ns, low of a one below 420 ns, latch over 280 us',
        from: 'quotations of the newer (V5) datasheet',
        verified: 'secondary',
      },
    ],
  },
};
