/** Buttons: their gestures and what these do. */
import { limits } from '../limits.ts';
import { name, pin } from './values.ts';
import { z } from './zod.ts';

export const action = z
  .discriminatedUnion('do', [
    z.strictObject({ do: z.literal('next-look') }),
    z.strictObject({ do: z.literal('previous-look') }),
    z.strictObject({ do: z.literal('go-to-look'), look: name }),
    z.strictObject({ do: z.literal('brightness-step') }),
    z.strictObject({ do: z.literal('blackout') }),
    z.strictObject({ do: z.literal('pause') }),
  ])
  .meta({ id: 'action' });

export const button = z
  .strictObject({
    name,
    pin,
    press: action.optional(),
    hold: action.optional(),
    double: action.optional(),
  })
  .meta({ id: 'button', description: 'Between its pin and ground.' });

export const controls = z
  .strictObject({
    debounceMilliseconds: z.int().min(1).max(250).default(20),
    holdMilliseconds: z.int().min(100).max(5000).default(600),
    doubleMilliseconds: z.int().min(50).max(2000).default(300),
    caughtMilliseconds: z
      .int()
      .min(1000)
      .max(60_000)
      .default(8000)
      .describe('Held longer than this, a button is caught in a bag and does nothing more.'),
    brightnessSteps: z.array(z.int().min(1).max(255)).min(1).max(16).default([32, 64, 128, 255]),
    buttons: z.array(button).max(limits.buttons).default([]),
  })
  .meta({ id: 'controls' });
