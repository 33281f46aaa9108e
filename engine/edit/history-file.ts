/** Histories that were saved, to go on with after the page was closed. */
import type { Checked } from '../diagnostic.ts';
import { z } from '../piece/schema/zod.ts';
import { editSchema } from './edit.ts';
import { type History, mostSteps } from './history.ts';
import { parseAs } from './parse.ts';

const stepName = z.string().max(400);
const steps = z.array(z.strictObject({ name: stepName, edit: editSchema })).max(mostSteps);

const historySchema = z.strictObject({
  done: steps,
  undone: steps,
  drag: z.strictObject({ name: stepName, back: editSchema.nullable() }).nullable(),
  growing: z.boolean(),
});

/**
 * The history in data of any origin, or what is wrong with it, at paths that begin with `history`. That it
 * belongs to a piece only shows when its steps are taken: one that does not fit is refused then.
 */
export function parseHistory(data: unknown): Checked<History> {
  return parseAs(historySchema, data, 'history');
}
