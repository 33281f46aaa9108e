/** How much light a level stands for. */
import type { Output } from '../piece/schema.ts';

export type Curve = Output['curve'];

/** Light of full drive in the 16 bit light scale: 255 steps of 256, so that the high byte is the drive. */
export const fullLight = 65280;

/** IEC 61966-2-1, from the coded value to linear light, both 0..1. */
export function srgbLight(coded: number): number {
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
}

/** CIE 15: luminance of a lightness L* = 100 * coded, both 0..1. */
export function lightnessLight(coded: number): number {
  const lightness = 100 * coded;
  return lightness > 8 ? ((lightness + 16) / 116) ** 3 : (lightness * 27) / 24389;
}

function lightOf(curve: Curve): (coded: number) => number {
  if (curve === 'srgb') return srgbLight;
  if (curve === 'lightness') return lightnessLight;
  return (coded) => coded ** curve.power;
}

/** Light of each of the 256 levels: round(65280 * Y(level / 255)). */
export function gammaTable(curve: Curve): Uint16Array {
  const light = lightOf(curve);
  return Uint16Array.from({ length: 256 }, (_, level) => Math.round(fullLight * light(level / 255)));
}
