/** From the keys of a parameter, as a file has them, to the course that the preview and the chip follow. */
import { levelsOfColour } from '../fixed/gradient.ts';
import { easingTable } from '../look/easing.ts';
import type { KeyedFormat, KeyedParameter } from '../look/keyframes.ts';
import type { ParameterDescription, ParameterValue } from '../piece/schema.ts';

export type Keyed = Extract<ParameterValue, { readonly keys: readonly { readonly value: unknown }[] }>;

export const isKeyed = (value: ParameterValue): value is Keyed =>
  typeof value === 'object' && !Array.isArray(value);

const channelNames = ['_red', '_green', '_blue'] as const;

/** @param channel 0 to 2 of a colour, whose channels have a course each; 0 of a number */
export function keyedParameter(
  description: ParameterDescription,
  { keys }: Keyed,
  to: KeyedFormat,
  channel: number,
): KeyedParameter {
  const numberOf = (value: number | string) =>
    typeof value === 'string' ? levelsOfColour(value)[channel]! : value;
  const { min, max } = 'min' in description ? description : { min: 0, max: 255 };
  const suffix = description.kind === 'colour' ? channelNames[channel] : '';
  return {
    name: `${description.name}${suffix}`,
    keys: keys.map(({ atMilliseconds, value, easing }) => ({
      atMilliseconds,
      value: Math.round(numberOf(value) * 65536),
      easing: easingTable(easing),
    })),
    min: Math.round(min * 65536),
    max: Math.round(max * 65536),
    to,
  };
}
