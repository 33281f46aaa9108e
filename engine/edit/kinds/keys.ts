/** Keyframes of a clip's parameter. Their times count from the start of the clip. */
import { easing } from '../../piece/schema/look.ts';
import { parameterNumber } from '../../piece/schema/pattern.ts';
import { colour, lookTime } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { clipAddress, place } from './addresses.ts';
import { parameterName } from './clips.ts';

const key = z.strictObject({
  atMilliseconds: lookTime,
  value: z.union([parameterNumber, colour]),
  easing: easing.default('linear'),
});
export type Key = z.output<typeof key>;

const course = { at: clipAddress, parameter: parameterName };

export const keyShorthands = [
  z.strictObject({ kind: z.literal('add-key'), ...course, key }),
  z.strictObject({ kind: z.literal('remove-key'), ...course, key: place }),
  z.strictObject({ kind: z.literal('move-key'), ...course, key: place, toMilliseconds: lookTime }),
  z.strictObject({
    kind: z.literal('set-key'),
    ...course,
    key: place,
    set: changesOf(key, ['value', 'easing']),
  }),
] as const;
