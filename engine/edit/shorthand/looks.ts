import { found, given } from '../outcome.ts';
import { lookSpot } from '../shelves.ts';
import type { Expansions } from './expansions.ts';

export const lookExpansions: Expansions<'duplicate-look'> = {
  'duplicate-look': (piece, { look, name }) =>
    given(lookSpot(piece, look), ({ index, item }) =>
      found([{ kind: 'add-look', index: index + 1, look: { ...item, name } } as const]),
    ),
};
