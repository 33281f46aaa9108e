/** The tag tied to the selected clip: what it plays and everything that can be turned on it. */

import { blendNames } from '../../../engine/look/blend.ts';
import type { Clip, ParameterValue, Piece } from '../../../engine/piece/schema.ts';
import { clipAddress, clipAt } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { duration, percent } from '../session/words.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { Dial } from './Dial.tsx';
import { ParameterRow } from './ParameterRow.tsx';
import { patternOf } from './pattern-of.ts';

interface Props {
  readonly sourceOpen: boolean;
  readonly onSource: () => void;
}

export function Tag({ sourceOpen, onSource }: Props) {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const selected = useStore(session.selected);
  const clip = piece === undefined || selected === null ? undefined : clipAt(piece, selected);
  if (piece === undefined || selected === null || clip === undefined) {
    return (
      <aside className="tag" aria-label="Clip">
        <p className="whisper">This look has no clips: it is dark.</p>
      </aside>
    );
  }
  return <ClipTag piece={piece} at={selected} clip={clip} sourceOpen={sourceOpen} onSource={onSource} />;
}

interface ClipTagProps extends Props {
  readonly piece: Piece;
  readonly at: ClipPosition;
  readonly clip: Clip;
}

function ClipTag({ piece, at, clip, sourceOpen, onSource }: ClipTagProps) {
  const session = useSession();
  const library = useStore(session.loft.library);
  const editFaults = usePart(session.bench, (bench) => bench.editFaults);
  const pattern = patternOf(clip, piece, library);
  if (pattern === null) return <aside className="tag" aria-label="Clip" />;
  const place = `${at.look}.${at.track}.${at.clip}`;
  const address = clipAddress(piece, at);
  const setParameter = (parameter: string, value: ParameterValue) =>
    session.edit({ kind: 'set-parameter', at: address, parameter, value }, 'drag');
  const rest = () => session.endDrag();
  const ends = clip.startMilliseconds + clip.lengthMilliseconds;
  return (
    <aside className="tag" aria-label={`Clip: ${pattern.title}`}>
      <header>
        <h2>{pattern.title}</h2>
        <p className="whisper">
          on {clip.zone},{' '}
          {clip.endless ? 'endless' : `${duration(clip.startMilliseconds)} to ${duration(ends)}`}
        </p>
        {pattern.sees !== '' && <p className="sees">{pattern.sees}</p>}
      </header>
      <div className="dials" key={place}>
        {pattern.parameters.map((parameter) => (
          <ParameterRow
            key={parameter.name}
            parameter={parameter}
            value={clip.parameters[parameter.name] ?? parameter.default}
            onChange={(value) => setParameter(parameter.name, value)}
            onRest={rest}
          />
        ))}
      </div>
      <div className="dials laying">
        <Dial
          label="Opacity"
          min={0}
          max={255}
          step={1}
          value={clip.opacity}
          text={percent(clip.opacity)}
          onChange={(opacity) => session.edit({ kind: 'set-clip', at: address, set: { opacity } }, 'drag')}
          onRest={rest}
        />
        <div className="row">
          <label htmlFor="blend">Mixes by</label>
          <select
            id="blend"
            value={clip.blend}
            onChange={(event) => {
              const blend = blendNames.find((name) => name === event.target.value);
              if (blend !== undefined) session.edit({ kind: 'set-clip', at: address, set: { blend } });
            }}
          >
            {blendNames.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
      </div>
      {editFaults.length > 0 && (
        <p className="fault" role="alert">
          {editFaults[0]!.message} {editFaults[0]!.advice}
        </p>
      )}
      <button type="button" className="quiet wide" aria-expanded={sourceOpen} onClick={onSource}>
        {sourceOpen ? 'Close the source' : 'Show the source'}
      </button>
    </aside>
  );
}
