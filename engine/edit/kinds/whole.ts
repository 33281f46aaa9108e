/** What concerns the piece as a whole: its name and board, its line, output, supply and gesture times. */

import { controls } from '../../piece/schema/controls.ts';
import { line } from '../../piece/schema/layout.ts';
import { output, supply } from '../../piece/schema/power.ts';
import { z } from '../../piece/schema/zod.ts';
import { pieceSchema } from '../../piece/schema.ts';
import { changesOf } from '../changes.ts';
import { place } from './addresses.ts';

export const wholeKinds = [
  z.strictObject({
    kind: z.literal('set-piece'),
    set: changesOf(pieceSchema, ['name', 'board', 'tickMilliseconds']),
  }),
  z.strictObject({ kind: z.literal('set-line'), line: place, set: changesOf(line, ['pin', 'part']) }),
  z.strictObject({
    kind: z.literal('set-output'),
    set: changesOf(output, ['startBrightness', 'curve', 'balance']),
  }),
  z.strictObject({
    kind: z.literal('set-supply'),
    set: changesOf(supply, ['limitMilliamps', 'volts', 'keepAliveMilliamps']),
  }),
  z.strictObject({
    kind: z.literal('set-controls'),
    set: changesOf(controls, [
      'debounceMilliseconds',
      'holdMilliseconds',
      'doubleMilliseconds',
      'caughtMilliseconds',
      'brightnessSteps',
    ]),
  }),
] as const;
