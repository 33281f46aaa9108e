/** Lines with their runs, and zones on them. */
import { pixelPartNames } from '../../parts/pixels.ts';
import { limits } from '../limits.ts';
import { shape } from './shape.ts';
import { name, pin, rule } from './values.ts';
import { z } from './zod.ts';

const position = z
  .int()
  .min(0)
  .max(limits.pixels - 1);
const positions = z.array(position).max(limits.pixels).default([]);

export const run = z
  .strictObject({
    name,
    flat: shape.describe('On the bench.'),
    worn: shape
      .optional()
      .describe('As seen on the body, with the same number of pixels; else the flat place.'),
    removed: positions.describe('Positions in the run that are cut out: they have no address.'),
    hidden: positions.describe('Positions that are wired but stay dark, such as a repeater in a seam.'),
  })
  .meta({ id: 'run', description: 'Pixels wired one after another.' });

export const line = z
  .strictObject({ pin, part: z.enum(pixelPartNames), runs: z.array(run).min(1).max(limits.runs) })
  .meta({ id: 'line', description: 'One data pin and what is wired to it.' });

/** `layout/zones.ts` says which pixels each of them has, and under which index. */
export type ZoneSource =
  | { kind: 'all' }
  | { kind: 'run'; run: string }
  | { kind: 'range'; run: string; first: number; last: number }
  | { kind: 'stepped'; of: ZoneSource; every: number; offset: number }
  | { kind: 'reversed'; of: ZoneSource }
  | { kind: 'union'; of: ZoneSource[] }
  | { kind: 'twins'; of: ZoneSource[] };

const leaves = [
  z.strictObject({ kind: z.literal('all') }),
  z.strictObject({ kind: z.literal('run'), run: name }),
  z.strictObject({
    kind: z.literal('range'),
    run: name,
    first: position.describe('Positions in the run before anything was removed, both ends included.'),
    last: position.describe('Smaller than "first" to run backwards.'),
  }),
] as const;

const innermost = z.discriminatedUnion('kind', leaves, rule('zone-nesting'));

/** A schema for each depth instead of one that calls itself: no file can send it deeper. */
function zoneSourceOfDepth(depth: number): z.ZodType<ZoneSource> {
  const sources = depth <= 1 ? innermost : z.discriminatedUnion('kind', [...leaves, ...changes(depth - 1)]);
  return sources.meta({ id: `zone-source-${depth}` }) as unknown as z.ZodType<ZoneSource>;
}

/** What makes a zone from others. */
function changes(depth: number) {
  const inner = zoneSourceOfDepth(depth);
  const parts = z.array(inner).max(limits.zones);
  return [
    z.strictObject({
      kind: z.literal('stepped'),
      of: inner,
      every: z.int().min(1).max(limits.pixels),
      offset: z.int().min(0).max(limits.pixels).default(0),
    }),
    z.strictObject({ kind: z.literal('reversed'), of: inner }),
    z.strictObject({ kind: z.literal('union'), of: parts.min(1).describe('One after the other.') }),
    z.strictObject({ kind: z.literal('twins'), of: parts.min(2).describe('Side by side, sharing indices.') }),
  ] as const;
}

export const zone = z
  .strictObject({ name, source: zoneSourceOfDepth(limits.zoneNesting) })
  .meta({ id: 'zone', description: 'Pixels that clips play on.' });
