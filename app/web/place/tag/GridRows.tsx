/** Columns and rows of a grid, and how its rows are wired. */
import { useId } from 'react';
import type { ShapeOf } from '../../../../engine/edit/geometry/shape-of.ts';
import { changeGrid } from '../../../../engine/edit/offers/grid.ts';
import { limits } from '../../../../engine/piece/limits.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { NumberRow } from './NumberRow.tsx';

export function GridRows({ run, grid }: { run: Run; grid: ShapeOf<'grid'> }) {
  const session = useSession();
  const id = useId();
  const set = (columns: number, rows: number) => {
    if (!Number.isInteger(columns) || !Number.isInteger(rows)) return;
    session.pull(`Set columns and rows of run ${run.name}`, (piece) =>
      changeGrid(piece, run.name, columns, rows),
    );
  };
  const number = { min: 1, max: limits.pixels, step: 1, onRest: () => session.endDrag() };
  return (
    <>
      <NumberRow label="Columns" value={grid.columns} {...number} onChange={(to) => set(to, grid.rows)} />
      <NumberRow label="Rows" value={grid.rows} {...number} onChange={(to) => set(grid.columns, to)} />
      <div className="number-row">
        <label htmlFor={id}>Wired</label>
        <select
          id={id}
          className="wide-value"
          value={grid.order}
          onChange={({ target }) => {
            const order: typeof grid.order = target.value === 'rows' ? 'rows' : 'alternating';
            const worn = run.worn?.kind === 'grid' ? { worn: { ...run.worn, order } } : {};
            session.edit({ kind: 'set-run', run: run.name, set: { flat: { ...grid, order }, ...worn } });
          }}
        >
          <option value="alternating">to and fro</option>
          <option value="rows">every row one way</option>
        </select>
      </div>
    </>
  );
}
