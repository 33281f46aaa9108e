import { look as lookSchema, track as trackSchema } from '../../piece/schema/look.ts';
import { given } from '../outcome.ts';
import { lookSpot, looksOf, trackSpot, tracksOf } from '../shelves.ts';
import { add, addNamed, type Handlers, remove, rename, reorder, set } from './act.ts';

export const lookHandlers: Handlers<
  'add-look' | 'remove-look' | 'reorder-look' | 'rename-look' | 'set-look'
> = {
  'add-look': (piece, { index, look }) =>
    addNamed(piece, 'look', looksOf(piece), index, look, { kind: 'remove-look', look: look.name }),

  'remove-look': (piece, { look }) =>
    given(lookSpot(piece, look), (spot) =>
      remove(spot, { kind: 'add-look', index: spot.index, look: spot.item }),
    ),

  'reorder-look': (piece, { look, to }) =>
    given(lookSpot(piece, look), (spot) => reorder(spot, to, { kind: 'reorder-look', look, to: spot.index })),

  'rename-look': (piece, { look, name }) =>
    given(lookSpot(piece, look), (spot) =>
      rename(piece, 'look', spot, name, { kind: 'rename-look', look: name, name: look }),
    ),

  'set-look': (piece, { look, set: changes }) =>
    given(lookSpot(piece, look), (spot) =>
      set(spot, lookSchema, changes, (former) => ({ kind: 'set-look', look, set: former })),
    ),
};

export const trackHandlers: Handlers<'add-track' | 'remove-track' | 'reorder-track' | 'set-track'> = {
  'add-track': (piece, { at, track }) =>
    given(tracksOf(piece, at.look), (shelf) => add(shelf, at.track, track, { kind: 'remove-track', at })),

  'remove-track': (piece, { at }) =>
    given(trackSpot(piece, at), (spot) => remove(spot, { kind: 'add-track', at, track: spot.item })),

  'reorder-track': (piece, { at, to }) =>
    given(trackSpot(piece, at), (spot) =>
      reorder(spot, to, { kind: 'reorder-track', at: { ...at, track: to }, to: at.track }),
    ),

  'set-track': (piece, { at, set: changes }) =>
    given(trackSpot(piece, at), (spot) =>
      set(spot, trackSchema, changes, (former) => ({ kind: 'set-track', at, set: former })),
    ),
};
