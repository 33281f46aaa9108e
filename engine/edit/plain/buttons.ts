import { button as buttonSchema } from '../../piece/schema/controls.ts';
import { given } from '../outcome.ts';
import { buttonSpot, buttonsOf } from '../shelves.ts';
import { addNamed, type Handlers, remove, rename, reorder, set } from './act.ts';

export const buttonHandlers: Handlers<
  'add-button' | 'remove-button' | 'reorder-button' | 'rename-button' | 'set-button'
> = {
  'add-button': (piece, { index, button }) =>
    addNamed(piece, 'button', buttonsOf(piece), index, button, {
      kind: 'remove-button',
      button: button.name,
    }),

  'remove-button': (piece, { button }) =>
    given(buttonSpot(piece, button), (spot) =>
      remove(spot, { kind: 'add-button', index: spot.index, button: spot.item }),
    ),

  'reorder-button': (piece, { button, to }) =>
    given(buttonSpot(piece, button), (spot) =>
      reorder(spot, to, { kind: 'reorder-button', button, to: spot.index }),
    ),

  'rename-button': (piece, { button, name }) =>
    given(buttonSpot(piece, button), (spot) =>
      rename(piece, 'button', spot, name, { kind: 'rename-button', button: name, name: button }),
    ),

  'set-button': (piece, { button, set: changes }) =>
    given(buttonSpot(piece, button), (spot) =>
      set(spot, buttonSchema, changes, (former) => ({ kind: 'set-button', button, set: former })),
    ),
};
