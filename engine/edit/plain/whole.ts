import { controls as controlsSchema } from '../../piece/schema/controls.ts';
import { line as lineSchema } from '../../piece/schema/layout.ts';
import { output as outputSchema, supply as supplySchema } from '../../piece/schema/power.ts';
import { pieceSchema } from '../../piece/schema.ts';
import { changed, formerly } from '../changes.ts';
import { done, given } from '../outcome.ts';
import { lineSpot } from '../shelves.ts';
import { type Handlers, set } from './act.ts';

export const wholeHandlers: Handlers<
  'set-piece' | 'set-line' | 'set-output' | 'set-supply' | 'set-controls'
> = {
  'set-piece': (piece, { set: changes }) =>
    done(changed(pieceSchema, piece, changes), { kind: 'set-piece', set: formerly(piece, changes) }),

  'set-line': (piece, { line, set: changes }) =>
    given(lineSpot(piece, line), (spot) =>
      set(spot, lineSchema, changes, (former) => ({ kind: 'set-line', line, set: former })),
    ),

  'set-output': (piece, { set: changes }) =>
    done(
      { ...piece, output: changed(outputSchema, piece.output, changes) },
      { kind: 'set-output', set: formerly(piece.output, changes) },
    ),

  'set-supply': (piece, { set: changes }) =>
    done(
      { ...piece, supply: changed(supplySchema, piece.supply, changes) },
      { kind: 'set-supply', set: formerly(piece.supply, changes) },
    ),

  'set-controls': (piece, { set: changes }) =>
    done(
      { ...piece, controls: changed(controlsSchema, piece.controls, changes) },
      { kind: 'set-controls', set: formerly(piece.controls, changes) },
    ),
};
