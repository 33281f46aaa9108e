/** Colours as a maker turns them: lightness, richness and hue in OKLCH, kept inside of what a pixel can show. */
import { clampChroma, converter, formatHex, modeOklch, modeRgb, useMode as registerSpace } from 'culori/fn';

registerSpace(modeRgb);
registerSpace(modeOklch);
const toOklch = converter('oklch');
const toRgb = converter('rgb');

/** What rounding may carry beyond the edge: far less than a level. */
const edge = 1e-3;

export interface Turned {
  /** 0 black .. 1 white. */
  readonly lightness: number;
  /** 0 grey .. about 0.32 for the richest colour of sRGB. */
  readonly richness: number;
  /** Degrees. */
  readonly hue: number;
}

/** No colour of sRGB is richer than this (its blue primary is near 0.313, its magenta near 0.323). */
export const richest = 0.33;

/** @param hue kept where the colour itself has none, as greys do not */
export function turnedOf(hex: string, hue = 0): Turned {
  const { l, c, h } = toOklch(hex) ?? { l: 0, c: 0, h: undefined };
  return { lightness: l, richness: c, hue: h ?? hue };
}

/** The nearest colour of the same lightness and hue that exists in sRGB, as `#rrggbb`. */
export function hexOf({ lightness, richness, hue }: Turned): string {
  const asked = { mode: 'oklch', l: lightness, c: richness, h: hue } as const;
  const { r, g, b } = toRgb(asked);
  // The primaries lie on the very edge: clamped for a rounding error, blue would lose an eighth of its richness.
  const exists = [r, g, b].every((channel) => channel > -edge && channel < 1 + edge);
  return formatHex(exists ? asked : clampChroma(asked, 'oklch'));
}

/** A colour between two stops, per channel on levels, as the pixels mix it. */
export function between(a: string, b: string, share: number): string {
  const channel = (hex: string, at: number) => Number.parseInt(hex.slice(1 + 2 * at, 3 + 2 * at), 16);
  const mixed = [0, 1, 2].map((at) => Math.round(channel(a, at) * (1 - share) + channel(b, at) * share));
  return `#${mixed.map((level) => level.toString(16).padStart(2, '0')).join('')}`;
}
