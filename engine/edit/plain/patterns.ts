import { pattern as patternSchema } from '../../piece/schema/pattern.ts';
import { given } from '../outcome.ts';
import { patternSpot, patternsOf } from '../shelves.ts';
import { addNamed, type Handlers, remove, rename, reorder, set } from './act.ts';

export const patternHandlers: Handlers<
  'add-pattern' | 'remove-pattern' | 'reorder-pattern' | 'rename-pattern' | 'set-pattern'
> = {
  'add-pattern': (piece, { index, pattern }) =>
    addNamed(piece, 'pattern', patternsOf(piece), index, pattern, {
      kind: 'remove-pattern',
      pattern: pattern.name,
    }),

  'remove-pattern': (piece, { pattern }) =>
    given(patternSpot(piece, pattern), (spot) =>
      remove(spot, { kind: 'add-pattern', index: spot.index, pattern: spot.item }),
    ),

  'reorder-pattern': (piece, { pattern, to }) =>
    given(patternSpot(piece, pattern), (spot) =>
      reorder(spot, to, { kind: 'reorder-pattern', pattern, to: spot.index }),
    ),

  'rename-pattern': (piece, { pattern, name }) =>
    given(patternSpot(piece, pattern), (spot) =>
      rename(piece, 'pattern', spot, name, { kind: 'rename-pattern', pattern: name, name: pattern }),
    ),

  'set-pattern': (piece, { pattern, set: changes }) =>
    given(patternSpot(piece, pattern), (spot) =>
      set(spot, patternSchema, changes, (former) => ({ kind: 'set-pattern', pattern, set: former })),
    ),
};
