/** The piece's own patterns and what may be set on any pattern. */
import { limits } from '../limits.ts';
import { colour, name, rule } from './values.ts';
import { z } from './zod.ts';

/** Within +-16383, so that the difference of two values fits 16.16. */
export const parameterNumber = z.number().min(-16383).max(16383);

export const gradient = z
  .array(z.strictObject({ at: z.number().min(0).max(1), colour }))
  .min(1)
  .max(limits.gradientStops)
  .refine((stops) => stops.every((stop, i) => i === 0 || stop.at >= stops[i - 1]!.at), rule('gradient-order'))
  .meta({ id: 'gradient', description: 'Stops from 0 to 1; two at the same place make a hard edge.' });

const described = {
  name: z
    .string()
    .regex(/^[a-zA-Z][a-zA-Z0-9_]{0,31}$/, rule('parameter-identifier'))
    .describe('The identifier in the source; a gradient "reed" is its function "gradient_reed".'),
  label: name,
};

const unit = z.string().max(12).optional();

export const parameter = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('number'),
      ...described,
      min: parameterNumber,
      max: parameterNumber,
      default: parameterNumber,
      unit,
    }),
    z.strictObject({
      kind: z.literal('whole'),
      ...described,
      min: parameterNumber.int(),
      max: parameterNumber.int(),
      default: parameterNumber.int(),
      unit,
    }),
    z.strictObject({ kind: z.literal('yes-no'), ...described, default: z.boolean() }),
    z.strictObject({ kind: z.literal('colour'), ...described, default: colour }),
    z.strictObject({ kind: z.literal('gradient'), ...described, default: gradient }),
  ])
  .meta({ id: 'parameter' });

export const pattern = z
  .strictObject({
    name,
    source: z
      .string()
      .max(limits.patternBytes)
      .describe('GLSL ES 3.00, in the subset of the pattern language.'),
    parameters: z.array(parameter).max(limits.parametersPerPattern).default([]),
  })
  .meta({ id: 'pattern', description: 'A function that colours pixels.' });
