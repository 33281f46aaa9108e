/** Colours as a maker turns them: lightness, chroma and hue in OKLCH, kept inside of what a pixel can show. */
import { clampChroma, converter, formatHex, modeOklch, modeRgb, useMode as registerSpace } from 'culori/fn';

registerSpace(modeRgb);
registerSpace(modeOklch);
const toOklch = converter('oklch');
const toRgb = converter('rgb');

/** What rounding may carry beyond the edge: far less than a level. */
const edge = 1e-3;

/** By the names of CSS Color 4. */
export interface Oklch {
  /** 0 black .. 1 white. */
  readonly lightness: number;
  /** 0 grey .. about 0.32 for the most vivid colour of sRGB. */
  readonly chroma: number;
  /** Degrees. */
  readonly hue: number;
}

/** No colour of sRGB has more chroma than this (its blue primary is near 0.313, its magenta near 0.323). */
export const mostChroma = 0.33;

/** @param hue kept where the colour itself has none, as greys do not */
export function oklchOf(hex: string, hue = 0): Oklch {
  const { l, c, h } = toOklch(hex) ?? { l: 0, c: 0, h: undefined };
  return { lightness: l, chroma: c, hue: h ?? hue };
}

/** Whether sRGB has it, so that a pixel can show it. */
export function isInGamut({ lightness, chroma, hue }: Oklch): boolean {
  const { r, g, b } = toRgb({ mode: 'oklch', l: lightness, c: chroma, h: hue });
  return [r, g, b].every((channel) => channel > -edge && channel < 1 + edge);
}

/** The colour of the same lightness and hue that is as vivid as sRGB allows, as `#rrggbb`. */
export function hexOf(asked: Oklch): string {
  const colour = { mode: 'oklch', l: asked.lightness, c: asked.chroma, h: asked.hue } as const;
  // The primaries lie on the very edge: clamped for a rounding error, blue would lose an eighth of its chroma.
  return formatHex(isInGamut(asked) ? colour : clampChroma(colour, 'oklch'));
}

/** How vivid a colour of this lightness and hue can be. */
export function mostChromaAt(lightness: number, hue: number): number {
  const most = { lightness, chroma: mostChroma, hue };
  if (isInGamut(most)) return mostChroma;
  return clampChroma({ mode: 'oklch', l: lightness, c: mostChroma, h: hue }, 'oklch').c;
}

const paints = 24;

/** What a slider over one of the three would give at each place, as a CSS gradient. */
export function trackOf(colour: Oklch, turned: keyof Oklch, max: number): string {
  const stops = Array.from({ length: paints + 1 }, (_, i) =>
    hexOf({ ...colour, [turned]: (i / paints) * max }),
  );
  return `linear-gradient(90deg, ${stops.join(', ')})`;
}
