/** Clips on their tracks. */
import { clip, parameterValue } from '../../piece/schema/look.ts';
import { lookLength, lookTime } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { clipAddress } from './addresses.ts';

/** As short as a clip can be. */
export const shortestClip = lookLength.minValue!;

/** Not bounded by the names that a pattern can have: one that no longer has it may still be unset. */
export const parameterName = z.string().max(40);

export const clipKinds = [
  z.strictObject({ kind: z.literal('add-clip'), at: clipAddress, clip }),
  z.strictObject({ kind: z.literal('remove-clip'), at: clipAddress }),
  z.strictObject({
    kind: z.literal('move-clip'),
    at: clipAddress,
    to: clipAddress.describe('Counted without the clip itself.'),
    startMilliseconds: lookTime,
  }),
  z.strictObject({
    kind: z.literal('set-clip'),
    at: clipAddress,
    set: changesOf(clip, [
      'pattern',
      'zone',
      'startMilliseconds',
      'lengthMilliseconds',
      'endless',
      'opacity',
      'blend',
      'fadeInMilliseconds',
      'fadeOutMilliseconds',
      'seed',
      'parameters',
    ]),
  }),
  z.strictObject({
    kind: z.literal('set-parameter'),
    at: clipAddress,
    parameter: parameterName,
    value: parameterValue.nullable().describe('Null leaves it to the default of the pattern.'),
  }),
] as const;

export const clipShorthands = [
  z.strictObject({
    kind: z.literal('duplicate-clip'),
    at: clipAddress,
    to: clipAddress,
    startMilliseconds: lookTime,
  }),
  z.strictObject({
    kind: z.literal('trim-clip'),
    at: clipAddress,
    startMilliseconds: lookTime,
    lengthMilliseconds: lookLength,
  }),
  z.strictObject({
    kind: z.literal('split-clip'),
    at: clipAddress,
    atMilliseconds: lookTime.describe('In the time of the look.'),
  }),
] as const;
