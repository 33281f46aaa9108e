/** What the run is cut from: how dense the strip is, how many pixels, how long that is. */
import { useId } from 'react';
import { pitchOf } from '../../../../engine/edit/geometry/pitch.ts';
import { changeCount, changePitch } from '../../../../engine/edit/offers/count.ts';
import { pixelCount } from '../../../../engine/layout/shapes.ts';
import { limits } from '../../../../engine/piece/limits.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { densities, densityOf, pitchAt } from '../lay/densities.ts';
import { lengthWords } from '../words.ts';
import { GridRows } from './GridRows.tsx';
import { NumberRow } from './NumberRow.tsx';

export function StripRows({ run }: { run: Run }) {
  const session = useSession();
  const id = useId();
  const count = pixelCount(run.flat);
  const pitch = pitchOf(run.flat);
  const density = pitch === undefined ? undefined : densityOf(pitch);
  const rest = () => session.endDrag();
  return (
    <>
      {pitch !== undefined && (
        <>
          <div className="number-row">
            <label htmlFor={id}>Density</label>
            <select
              id={id}
              className="wide-value"
              value={density ?? ''}
              onChange={({ target }) => {
                const wanted = pitchAt(Number(target.value));
                session.pull(`Set pitch of run ${run.name}`, (piece) => changePitch(piece, run.name, wanted));
                rest();
              }}
            >
              {density === undefined && <option value="">free</option>}
              {densities.map((each) => (
                <option key={each} value={each}>
                  {each} a metre
                </option>
              ))}
            </select>
          </div>
          <NumberRow
            label="Pitch"
            unit="mm"
            min={0.5}
            max={1000}
            step={0.1}
            value={pitch}
            onChange={(wanted) =>
              session.pull(`Set pitch of run ${run.name}`, (piece) => changePitch(piece, run.name, wanted))
            }
            onRest={rest}
          />
        </>
      )}
      {run.flat.kind === 'grid' ? (
        <GridRows run={run} grid={run.flat} />
      ) : (
        <NumberRow
          label="Pixels"
          min={1}
          max={limits.pixels}
          step={1}
          value={count}
          onChange={(wanted) => {
            if (Number.isInteger(wanted))
              session.pull(`Set count of run ${run.name}`, (piece) =>
                changeCount(piece, run.name, wanted, 'pitch'),
              );
          }}
          onRest={rest}
        />
      )}
      {pitch !== undefined && (
        <p className="whisper">
          {count === 1 ? 'One pixel' : `${count} pixels`} on {lengthWords(pitch * count)} of strip.
        </p>
      )}
    </>
  );
}
