/** Patterns of the piece's own. */
import { pattern } from '../../piece/schema/pattern.ts';
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';
import { changesOf } from '../changes.ts';
import { place } from './addresses.ts';

export const patternKinds = [
  z.strictObject({ kind: z.literal('add-pattern'), index: place, pattern }),
  z.strictObject({ kind: z.literal('remove-pattern'), pattern: name }),
  z.strictObject({ kind: z.literal('reorder-pattern'), pattern: name, to: place }),
  z.strictObject({ kind: z.literal('rename-pattern'), pattern: name, name }),
  z.strictObject({
    kind: z.literal('set-pattern'),
    pattern: name,
    set: changesOf(pattern, ['source', 'parameters']),
  }),
] as const;
