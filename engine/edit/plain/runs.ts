import { run as runSchema } from '../../piece/schema/layout.ts';
import { given } from '../outcome.ts';
import { runSpot, runsOf } from '../shelves.ts';
import { addNamed, type Handlers, remove, rename, reorder, set } from './act.ts';

export const runHandlers: Handlers<'add-run' | 'remove-run' | 'reorder-run' | 'rename-run' | 'set-run'> = {
  'add-run': (piece, { line, index, run }) =>
    given(runsOf(piece, line), (shelf) =>
      addNamed(piece, 'zone', shelf, index, run, { kind: 'remove-run', run: run.name }),
    ),

  'remove-run': (piece, { run }) =>
    given(runSpot(piece, run), (spot) =>
      remove(spot, { kind: 'add-run', line: spot.line, index: spot.index, run: spot.item }),
    ),

  'reorder-run': (piece, { run, to }) =>
    given(runSpot(piece, run), (spot) => reorder(spot, to, { kind: 'reorder-run', run, to: spot.index })),

  'rename-run': (piece, { run, name }) =>
    given(runSpot(piece, run), (spot) =>
      rename(piece, 'zone', spot, name, { kind: 'rename-run', run: name, name: run }),
    ),

  'set-run': (piece, { run, set: changes }) =>
    given(runSpot(piece, run), (spot) =>
      set(spot, runSchema, changes, (former) => ({ kind: 'set-run', run, set: former })),
    ),
};
