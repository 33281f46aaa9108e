/** Shapes of runs. `layout/shapes.ts` says where their pixels lie. */
import { limits } from '../limits.ts';
import { z } from './zod.ts';

const count = z.int().min(1).max(limits.pixels);
const millimetres = z.number().min(-100_000).max(100_000);
const degrees = z.number().min(-3600).max(3600);
const pitch = z.number().gt(0).max(1000);
const point = z.tuple([millimetres, millimetres]).meta({
  id: 'point',
  description: 'x to the right and y up, in millimetres.',
});

/** Of the command C of SVG paths, with the same three points. */
const curve = z
  .strictObject({ firstControl: point, secondControl: point, end: point })
  .meta({ id: 'curve', description: 'A cubic Bezier curve, from where the one before it ends.' });

export const shape = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('straight'),
      count,
      start: point.describe('Centre of the first pixel.'),
      pitchMillimetres: pitch,
      directionDegrees: degrees.default(0),
    }),
    z.strictObject({
      kind: z.literal('ring'),
      count,
      centre: point,
      diameterMillimetres: z.number().gt(0).max(20_000),
      firstDegrees: degrees.default(90),
      clockwise: z.boolean().default(true),
      flattening: z
        .number()
        .min(0)
        .max(1)
        .default(1)
        .describe('Seen at a slant, a ring is an ellipse: its height over its width.'),
    }),
    z.strictObject({
      kind: z.literal('arc'),
      count,
      centre: point,
      radiusMillimetres: z.number().gt(0).max(10_000),
      firstDegrees: degrees,
      lastDegrees: degrees,
    }),
    z.strictObject({
      kind: z.literal('grid'),
      columns: count,
      rows: count,
      start: point.describe(
        'Centre of the first pixel; each further row lies to the right of its direction.',
      ),
      pitchMillimetres: pitch,
      rowPitchMillimetres: pitch.optional().describe('The pitch itself where it is left out.'),
      directionDegrees: degrees.default(0),
      order: z
        .enum(['rows', 'alternating'])
        .default('rows')
        .describe('All rows in one direction, or every second one back again.'),
    }),
    z.strictObject({
      kind: z.literal('path'),
      count,
      start: point.describe('Centre of the first pixel.'),
      curves: z.array(curve).min(1).max(limits.curvesPerPath),
      pitchMillimetres: pitch.describe('Along the curves; behind the end of the last one straight on.'),
    }),
    z.strictObject({ kind: z.literal('points'), points: z.array(point).min(1).max(limits.pixels) }),
  ])
  .meta({ id: 'shape', description: 'Lengths in millimetres, degrees counter-clockwise from the x axis.' });
