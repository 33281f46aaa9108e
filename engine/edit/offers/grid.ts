import type { Checked } from '../../diagnostic.ts';
import type { Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import { found, given, refused } from '../outcome.ts';
import { runSpot } from '../shelves.ts';
import { sourceUpTo } from '../sources.ts';

/**
 * Gives a grid so many columns and rows at its pitch, flat and worn. Removed and hidden pixels beyond its
 * new end are forgotten, and ranges of zones end there; a zone that lies wholly beyond it is in the way.
 */
export function changeGrid(piece: Piece, run: string, columns: number, rows: number): Checked<Edit> {
  return given(runSpot(piece, run), ({ item }) => {
    const { flat, worn } = item;
    if (flat.kind !== 'grid') return noGrid(run);
    const count = columns * rows;
    if (worn !== undefined && worn.kind !== 'grid' && count !== flat.columns * flat.rows)
      return wornApart(run);
    const isThere = (position: number) => position < count;
    const set = {
      flat: { ...flat, columns, rows },
      ...(worn?.kind === 'grid' ? { worn: { ...worn, columns, rows } } : {}),
      removed: item.removed.filter(isThere),
      hidden: item.hidden.filter(isThere),
    };
    const zones = piece.zones.flatMap(({ name, source }): Edit[] => {
      const shorter = sourceUpTo(source, run, count);
      if (shorter === source || shorter === undefined) return [];
      return [{ kind: 'set-zone', zone: name, set: { source: shorter } }];
    });
    return found(together(`Set columns and rows of run ${run}`, [{ kind: 'set-run', run, set }, ...zones]));
  });
}

function noGrid(run: string) {
  return refused('run-no-grid', `The run "${run}" is no grid.`, 'Choose a run that has columns and rows.');
}

function wornApart(run: string) {
  return refused(
    'grid-worn-apart',
    `The worn place of "${run}" is no grid, so it cannot get more or fewer columns.`,
    'Let it be seen at its flat place first.',
  );
}
