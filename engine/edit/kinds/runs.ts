/** Runs: which there are, in what order they are wired, and where their pixels lie. */
import { run } from '../../piece/schema/layout.ts';
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { place } from './addresses.ts';

export const runKinds = [
  z.strictObject({ kind: z.literal('add-run'), line: place, index: place, run }),
  z.strictObject({ kind: z.literal('remove-run'), run: name }),
  z.strictObject({ kind: z.literal('reorder-run'), run: name, to: place }),
  z.strictObject({ kind: z.literal('rename-run'), run: name, name }),
  z.strictObject({
    kind: z.literal('set-run'),
    run: name,
    set: changesOf(run, ['flat', 'worn', 'removed', 'hidden']),
  }),
] as const;

/** Where a run lies on the bench, or as it is seen on the body. */
export const sides = ['flat', 'worn'] as const;
export type Side = (typeof sides)[number];

const millimetres = z.number().min(-100_000).max(100_000);
const point = z.tuple([millimetres, millimetres]);
const degrees = z.number().min(-3600).max(3600);
const selection = { side: z.enum(sides), runs: z.array(name).min(1) };

/** A line to mirror at: through a point, in a direction counter-clockwise from the x axis. */
export const axis = z.strictObject({ through: point, degrees });
export type Axis = z.output<typeof axis>;

/** Lengths in millimetres, y up, angles counter-clockwise. */
export const runShorthands = [
  z.strictObject({ kind: z.literal('duplicate-run'), run: name, name }),
  z.strictObject({ kind: z.literal('move-runs'), ...selection, by: point }),
  z.strictObject({ kind: z.literal('turn-runs'), ...selection, about: point, degrees }),
  z.strictObject({
    kind: z.literal('scale-runs'),
    ...selection,
    about: point,
    factor: z.number().min(0.001).max(1000),
  }),
  z.strictObject({ kind: z.literal('mirror-runs'), ...selection, axis }),
] as const;
