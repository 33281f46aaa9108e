import type { Checked } from '../../diagnostic.ts';
import type { Piece, Shape } from '../../piece/schema.ts';
import type { Edit } from '../edit.ts';
import { mirrorShape } from '../geometry/mirror.ts';
import { moveShape } from '../geometry/move.ts';
import { scaleShape } from '../geometry/scale.ts';
import { turnShape } from '../geometry/turn.ts';
import type { Side } from '../kinds/runs.ts';
import { found, given } from '../outcome.ts';
import { runSpot } from '../shelves.ts';
import type { Expansions } from './expansions.ts';

export const runExpansions: Expansions<
  'duplicate-run' | 'move-runs' | 'turn-runs' | 'scale-runs' | 'mirror-runs'
> = {
  'duplicate-run': (piece, { run, name }) =>
    given(runSpot(piece, run), ({ line, index, item }) =>
      found([{ kind: 'add-run', line, index: index + 1, run: { ...item, name } } as const]),
    ),

  'move-runs': (piece, { side, runs, by }) => reshaped(piece, side, runs, (shape) => moveShape(shape, by)),

  'turn-runs': (piece, { side, runs, about, degrees }) =>
    reshaped(piece, side, runs, (shape) => turnShape(shape, about, degrees)),

  'scale-runs': (piece, { side, runs, about, factor }) =>
    reshaped(piece, side, runs, (shape) => scaleShape(shape, about, factor)),

  'mirror-runs': (piece, { side, runs, axis }) =>
    reshaped(piece, side, runs, (shape) => mirrorShape(shape, axis)),
};

/** A run that has no worn place yet gets one from its flat place, as that is where it is seen. */
function reshaped(
  piece: Piece,
  side: Side,
  runs: readonly string[],
  change: (shape: Shape) => Shape,
): Checked<readonly Edit[]> {
  const edits: Edit[] = [];
  for (const run of new Set(runs)) {
    const spot = runSpot(piece, run);
    if (spot.value === undefined) return spot;
    const { item } = spot.value;
    edits.push({ kind: 'set-run', run, set: { [side]: change(item[side] ?? item.flat) } });
  }
  return found(edits);
}
