/** Buttons, and what their gestures do. */
import { button } from '../../piece/schema/controls.ts';
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { place } from './addresses.ts';

export const buttonKinds = [
  z.strictObject({ kind: z.literal('add-button'), index: place, button }),
  z.strictObject({ kind: z.literal('remove-button'), button: name }),
  z.strictObject({ kind: z.literal('reorder-button'), button: name, to: place }),
  z.strictObject({ kind: z.literal('rename-button'), button: name, name }),
  z.strictObject({
    kind: z.literal('set-button'),
    button: name,
    set: changesOf(button, ['pin', 'press', 'hold', 'double']),
  }),
] as const;
