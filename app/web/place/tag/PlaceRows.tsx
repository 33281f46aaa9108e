/** Where one run lies on the side that is worked on, in numbers. */
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { shapeOn } from '../surface/places.ts';
import { NumberRow } from './NumberRow.tsx';
import { PixelRows } from './PixelRows.tsx';
import { fieldsOf } from './shape-fields.ts';

export function PlaceRows({ run }: { run: Run }) {
  const session = useSession();
  const side = useStore(session.desk.side);
  const shape = shapeOn(run, side);
  const { name } = run;
  return (
    <>
      {fieldsOf(shape).map(({ label, unit, min, max, step, value, with: changed }) => (
        <NumberRow
          key={label}
          label={label}
          unit={unit}
          min={min}
          max={max}
          step={step}
          value={value}
          onChange={(to) =>
            session.edit({ kind: 'set-run', run: name, set: { [side]: changed(to) } }, 'drag')
          }
          onRest={() => session.endDrag()}
        />
      ))}
      {shape.kind === 'points' && <PixelRows run={name} shape={shape} />}
      {shape.kind === 'ring' && (
        <label className="switch-row">
          <span>Clockwise</span>
          <input
            type="checkbox"
            className="switch"
            checked={shape.clockwise}
            onChange={({ target }) =>
              session.edit({
                kind: 'set-run',
                run: name,
                set: { [side]: { ...shape, clockwise: target.checked } },
              })
            }
          />
        </label>
      )}
      {run.worn !== undefined && (
        <button
          type="button"
          className="quiet small"
          onClick={() => session.edit({ kind: 'set-run', run: name, set: { worn: null } })}
        >
          Wear it where it lies flat
        </button>
      )}
    </>
  );
}
