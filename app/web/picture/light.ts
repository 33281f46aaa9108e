/** From drive to the colour of a glow on the screen. */

/**
 * Drive is linear light, 255 is a pixel at full power. After dark an eye is open wide, so the picture is
 * exposed for the piece's usual brightness: this drive looks as bright as the screen can be.
 */
export const brightestDrive = 112;

/** Screen value (sRGB, IEC 61966-2-1) of each drive. */
const screenOfDrive = Uint8Array.from({ length: 256 }, (_, drive) => {
  const light = Math.min(1, drive / brightestDrive);
  const coded = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * coded);
});

/**
 * Packs the colour of pixel `index` as 0xRRGGBB.
 * @param order where red, green, blue (and white) stand in the pixel's drive
 */
export function screenColour(drive: Uint8Array, index: number, order: readonly number[]): number {
  const base = index * order.length;
  const white = order.length > 3 ? drive[base + order[3]!]! : 0;
  const channel = (at: number) => screenOfDrive[Math.min(255, drive[base + order[at]!]! + white)]!;
  return (channel(0) << 16) | (channel(1) << 8) | channel(2);
}

/** A colour 0xRRGGBB with a share of its screen value. */
export function dimmed(colour: number, share: number): number {
  const channel = (shift: number) => Math.round(((colour >> shift) & 255) * share) << shift;
  return channel(16) | channel(8) | channel(0);
}
