/** Zones of the piece's own. */
import { zone } from '../../piece/schema/layout.ts';
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { place } from './addresses.ts';

export const zoneKinds = [
  z.strictObject({ kind: z.literal('add-zone'), index: place, zone }),
  z.strictObject({ kind: z.literal('remove-zone'), zone: name }),
  z.strictObject({ kind: z.literal('reorder-zone'), zone: name, to: place }),
  z.strictObject({ kind: z.literal('rename-zone'), zone: name, name }),
  z.strictObject({ kind: z.literal('set-zone'), zone: name, set: changesOf(zone, ['source']) }),
] as const;
