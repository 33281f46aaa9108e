/** The piece file for other tools: editors complete and check it by this schema while a maker types. */

import { newestVersion } from './migrate.ts';
import { z } from './schema/zod.ts';
import { pieceSchema } from './schema.ts';

/**
 * JSON Schema (draft 2020-12) of what may stand in a file: fields with defaults may be left out. What
 * needs two places of the file to be judged is beyond it; `checkPiece` knows that as well.
 */
export function pieceJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(pieceSchema, { io: 'input', target: 'draft-2020-12' });
  return { ...schema, title: `Weftlight piece, version ${newestVersion}` };
}
