/** Brightness and balance, as one factor a channel that is multiplied into light before anything is rounded. */

/** Brightness 0..255 as a factor in 1/256: 0 is dark, 255 is exactly one. */
export function brightnessFactor(brightness: number): number {
  return brightness + (brightness >> 7);
}

/** Factor in 1/256 of a channel whose balance is 0..256. */
export function channelFactor(brightness: number, balance: number): number {
  return (brightnessFactor(brightness) * balance + 128) >> 8;
}

/** Light 0..65280 times a factor 0..256, floored. */
export function scaleLight(light: number, factor: number): number {
  return (light * factor) >> 8;
}

/** The only rounding from level to drive. */
export function roundToDrive(light: number): number {
  return (light + 128) >> 8;
}
