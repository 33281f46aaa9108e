/** Looks, their tracks and clips. */
import { blendNames } from '../../look/blend.ts';
import { easingNames } from '../../look/easing.ts';
import { limits } from '../limits.ts';
import { gradient, parameterNumber } from './pattern.ts';
import { byte, colour, lookLength, lookTime, name, rule } from './values.ts';
import { z } from './zod.ts';

const bezierTime = z.number().min(0).max(1);
const bezierValue = z.number().min(-4).max(4);

export const easing = z
  .union([z.enum(easingNames), z.tuple([bezierTime, bezierValue, bezierTime, bezierValue])])
  .meta({ id: 'easing', description: 'By the names of CSS, or the four numbers of its cubic-bezier().' });

const keyed = <Value extends z.ZodType>(value: Value) =>
  z.strictObject({
    keys: z
      .array(z.strictObject({ atMilliseconds: lookTime, value, easing: easing.default('linear') }))
      .min(1)
      .max(limits.keysPerParameter)
      .refine(
        (keys) => keys.every((key, i) => i === 0 || key.atMilliseconds > keys[i - 1]!.atMilliseconds),
        rule('keys-order'),
      )
      .describe('Times count from the start of the clip; an easing governs the way to the next key.'),
  });

export const parameterValue = z.union([
  parameterNumber,
  z.boolean(),
  colour,
  gradient,
  keyed(parameterNumber),
  keyed(colour),
]);

const fade = z.int().min(0).max(limits.fadeMilliseconds).default(0);

export const clip = z
  .strictObject({
    pattern: name.describe('A library pattern with its revision, "tide/1", or a pattern of this piece.'),
    zone: name.default('all'),
    startMilliseconds: lookTime.default(0),
    lengthMilliseconds: lookLength,
    endless: z
      .boolean()
      .default(false)
      .describe('Counts from the entry of the look over all its loops; then it has no end and no fade-out.'),
    opacity: byte.default(255),
    blend: z.enum(blendNames).default('normal').describe('By the names of W3C Compositing and Blending.'),
    fadeInMilliseconds: fade,
    fadeOutMilliseconds: fade,
    seed: z.int().min(0).max(65535).default(0),
    parameters: z.record(z.string(), parameterValue).default({}),
  })
  .meta({ id: 'clip' });

export const track = z
  .strictObject({ name: name.optional(), clips: z.array(clip).max(limits.clips) })
  .meta({ id: 'track', description: 'Clips that take turns.' });

const moveOn = z.strictObject({
  afterMilliseconds: lookLength,
  to: name.optional().describe('The next look where it is left out.'),
});

export const look = z
  .strictObject({
    name,
    lengthMilliseconds: lookLength,
    dissolveMilliseconds: z
      .int()
      .min(0)
      .max(limits.dissolveMilliseconds)
      .default(0)
      .describe('The look before it dissolves into this one over this time.'),
    moveOn: moveOn.optional().describe('Leave by itself, this long after the entry.'),
    tracks: z.array(track).max(limits.tracksPerLook).describe('The first one lies at the bottom.'),
  })
  .meta({ id: 'look', description: 'A state of light that stays until a button or its own timer moves on.' });
