/** An SVG file, or path data that is pasted: its lines are shown, and those chosen are laid as runs. */
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { lengthOfPath } from '../../../../engine/edit/geometry/path.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useHand } from '../hand.ts';
import { pitchOnHand } from '../lay/add.ts';
import { densities, densityOf, pitchAt } from '../lay/densities.ts';
import { boxAround } from '../surface/box.ts';
import { placesOn, runsOf } from '../surface/places.ts';
import { lengthWords, pixelWords } from '../words.ts';
import { pathData } from './draw-path.ts';
import { layLines } from './lay-lines.ts';
import { isTooLong, stripAlong } from './path-shape.ts';
import { boxOfLine, laidUnder, type NamedLine, readDrawing, readPathData } from './read-drawing.ts';
import '../../styles/place-curve.css';

/** Between what lies on the table and what is laid under it, in millimetres. */
const clearance = 40;

interface Props {
  readonly piece: Piece;
  readonly onClose: () => void;
}

export function DrawingDialog({ piece, onClose }: Props) {
  const session = useSession();
  const hand = useHand();
  const dialog = useRef<HTMLDialogElement>(null);
  const [lines, setLines] = useState<readonly NamedLine[]>([]);
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set());
  const [fault, setFault] = useState('');
  const [pitch, setPitch] = useState(() => pitchOnHand(piece));
  const title = useId();
  const density = useId();
  const pasted = useId();
  useEffect(() => dialog.current?.showModal(), []);

  const show = ({ lines, fault }: { lines: readonly NamedLine[]; fault: string }) => {
    setLines(lines);
    setFault(fault);
    const first = lines.findIndex(({ line }) => !isTooLong(line));
    setChosen(new Set(first < 0 ? [] : [first]));
  };
  const lay = () => {
    const wanted = [...chosen].sort((a, b) => a - b).map((i) => lines[i]!);
    const box = boxAround(placesOn(runsOf(piece), 'flat'));
    const laid = laidUnder(
      wanted.map(({ line }) => line),
      box === undefined ? [0, 0] : [(box.left + box.right) / 2, box.bottom - clearance],
    );
    const name = wanted[0]!.name.slice(0, 36).trim() || 'curve';
    if (layLines(session, hand, laid, name, pitch)) onClose();
    else setFault(session.bench.get().editFaults[0]?.message ?? '');
  };

  return (
    <dialog ref={dialog} className="drawing" aria-labelledby={title} onClose={onClose}>
      <h2 id={title}>A run along a drawing</h2>
      <p className="whisper">
        Every line of an SVG file can become a run of strip, true to size. The file is read here and sent
        nowhere.
      </p>
      <div className="drawing-sources">
        <label>
          <span>An SVG file</span>
          <input
            type="file"
            accept=".svg,image/svg+xml"
            onChange={async ({ target }) => {
              const file = target.files?.[0];
              if (file !== undefined) show(await readDrawing(file));
            }}
          />
        </label>
        <label htmlFor={pasted}>or path data, such as M0 0 C60 40 120 40 180 0, counted in CSS pixels</label>
        <textarea
          id={pasted}
          rows={2}
          spellCheck={false}
          onChange={({ target }) => show(readPathData(target.value))}
        />
      </div>
      {fault !== '' && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {lines.length > 0 && (
        <>
          <div className="drawing-density">
            <label htmlFor={density}>Strip with</label>
            <select
              id={density}
              value={densityOf(pitch) ?? ''}
              onChange={({ target }) => setPitch(pitchAt(Number(target.value)))}
            >
              {densityOf(pitch) === undefined && (
                <option value="">{lengthWords(pitch)} from pixel to pixel</option>
              )}
              {densities.map((each) => (
                <option key={each} value={each}>
                  {each} pixels a metre
                </option>
              ))}
            </select>
          </div>
          <ul className="drawing-lines">
            {lines.map((named, i) => (
              <LineChoice
                // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own.
                key={i}
                named={named}
                pitch={pitch}
                checked={chosen.has(i)}
                onChange={(checked) => {
                  const next = new Set(chosen);
                  if (checked) next.add(i);
                  else next.delete(i);
                  setChosen(next);
                }}
              />
            ))}
          </ul>
        </>
      )}
      <form method="dialog" className="drawing-foot">
        <button type="button" disabled={chosen.size === 0} onClick={lay}>
          {chosen.size > 1 ? `Lay ${chosen.size} runs` : 'Lay it down'}
        </button>
        <button type="submit" className="quiet">
          Back
        </button>
      </form>
    </dialog>
  );
}

interface ChoiceProps {
  readonly named: NamedLine;
  readonly pitch: number;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

function LineChoice({ named: { name, line }, pitch, checked, onChange }: ChoiceProps) {
  const { left, right, bottom, top } = boxOfLine(line);
  const room = Math.max(right - left, top - bottom, 1) * 0.06;
  const tooLong = isTooLong(line);
  const words = useMemo(() => {
    const strip = stripAlong(line, pitch);
    return `${lengthWords(lengthOfPath(strip))}, ${pixelWords(strip.count)}`;
  }, [line, pitch]);
  return (
    <li>
      <label>
        <input
          type="checkbox"
          checked={checked}
          disabled={tooLong}
          onChange={(event) => onChange(event.target.checked)}
        />
        <svg
          viewBox={`${left - room} ${-top - room} ${right - left + 2 * room} ${top - bottom + 2 * room}`}
          aria-hidden="true"
        >
          <path d={pathData(line, ([x, y]) => [x, -y])} />
        </svg>
        <span>
          <b>{name}</b>
          <small>{tooLong ? 'has more pieces than a run may' : words}</small>
        </span>
      </label>
    </li>
  );
}
