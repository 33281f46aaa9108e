/** Looks on the thread, and their tracks. */
import { look, track } from '../../piece/schema/look.ts';
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { place, trackAddress } from './addresses.ts';

export const lookKinds = [
  z.strictObject({ kind: z.literal('add-look'), index: place, look }),
  z.strictObject({ kind: z.literal('remove-look'), look: name }),
  z.strictObject({ kind: z.literal('reorder-look'), look: name, to: place }),
  z.strictObject({ kind: z.literal('rename-look'), look: name, name }),
  z.strictObject({
    kind: z.literal('set-look'),
    look: name,
    set: changesOf(look, ['lengthMilliseconds', 'dissolveMilliseconds', 'moveOn']),
  }),
] as const;

export const trackKinds = [
  z.strictObject({ kind: z.literal('add-track'), at: trackAddress, track }),
  z.strictObject({ kind: z.literal('remove-track'), at: trackAddress }),
  z.strictObject({ kind: z.literal('reorder-track'), at: trackAddress, to: place }),
  z.strictObject({ kind: z.literal('set-track'), at: trackAddress, set: changesOf(track, ['name']) }),
] as const;

export const lookShorthands = [
  z.strictObject({ kind: z.literal('duplicate-look'), look: name, name }),
] as const;
