/** From levels to light, and what may be drawn for it. */
import { byte } from './values.ts';
import { z } from './zod.ts';

export const output = z
  .strictObject({
    startBrightness: byte.default(64),
    curve: z
      .union([z.enum(['srgb', 'lightness']), z.strictObject({ power: z.number().min(1).max(4) })])
      .default('srgb')
      .describe('sRGB by IEC 61966-2-1, CIE lightness, or a plain power.'),
    balance: z
      .array(z.int().min(0).max(256))
      .min(3)
      .max(4)
      .optional()
      .describe('Red, green, blue (and white) of the part against each other; 256 is full.'),
  })
  .meta({ id: 'output' });

export const supply = z
  .strictObject({
    limitMilliamps: z.int().min(1).max(20_000).default(400),
    volts: z.number().min(1).max(24).default(5),
    keepAliveMilliamps: z
      .int()
      .min(0)
      .max(1000)
      .default(0)
      .describe('A power bank switches off below its threshold; a frame that would draw less is lifted.'),
  })
  .meta({ id: 'supply' });
