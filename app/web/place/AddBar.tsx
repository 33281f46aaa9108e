/** The bar over the tables: what can be laid down, and how the hand works. */
import { useState } from 'react';
import type { Piece } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { CurveAdders } from './curve/CurveAdders.tsx';
import { useHand } from './hand.ts';
import { takeRuns } from './in-hand.ts';
import { layInRoom } from './lay/add.ts';
import { type LaidKind, laidKinds, layKinds } from './lay/kinds.ts';
import { SideSwitch } from './SideSwitch.tsx';
import { hintOf } from './tools/tools.ts';

/** Small drawings of what each kind is. */
const pictures: Readonly<Record<LaidKind | 'dot', string>> = {
  strip: 'M3 14h0M8 14h0M13 14h0M18 14h0M23 14h0',
  ring: 'M13 5h0M19.400 7.600h0M22 14h0M19.400 20.400h0M13 23h0M6.600 20.400h0M4 14h0M6.600 7.600h0',
  arc: 'M3 19h0M5.500 12.500h0M13 9h0M20.500 12.500h0M23 19h0',
  dot: 'M5 20h0M10 9h0M16 17h0M22 6h0',
  grid: 'M5 6h0M13 6h0M21 6h0M5 14h0M13 14h0M21 14h0M5 22h0M13 22h0M21 22h0',
};

export function AddBar({ piece }: { piece: Piece }) {
  const session = useSession();
  const hand = useHand();
  const tool = useStore(hand.tool);
  const [byHand, setByHand] = useState(false);

  const add = (kind: LaidKind) => {
    if (byHand) {
      hand.take({ kind: 'lay', shape: kind });
      return;
    }
    const edit = layInRoom(piece, kind);
    session.edit(edit);
    takeRuns(session, [edit.run.name]);
  };

  return (
    <div className="add-bar" role="toolbar" aria-label="Lay down">
      <span className="add-word">Lay down</span>
      <div className="adders">
        {laidKinds.map((kind) => (
          <Adder
            key={kind}
            picture={pictures[kind]}
            title={layKinds[kind].title}
            pressed={byHand ? tool.kind === 'lay' && tool.shape === kind : undefined}
            onClick={() => add(kind)}
          />
        ))}
        <Adder
          picture={pictures.dot}
          title="Single pixels"
          pressed={tool.kind === 'dot'}
          onClick={() => {
            session.desk.side.set('flat');
            if (tool.kind === 'dot') hand.putAway();
            else hand.take({ kind: 'dot' });
          }}
        />
        <CurveAdders piece={piece} byHand={byHand} />
      </div>
      <label className="hand-switch" title="Draw it on the table instead of having it laid down">
        <input
          type="checkbox"
          className="switch"
          checked={byHand}
          onChange={(event) => {
            setByHand(event.target.checked);
            hand.putAway();
          }}
        />
        by hand
      </label>
      <SideSwitch />
      <div className="hint">
        <p aria-live="polite">{hintOf(tool)}</p>
        {tool.kind !== 'pick' && (
          <button type="button" className="quiet small" onClick={() => hand.putAway()}>
            Done
          </button>
        )}
      </div>
    </div>
  );
}

interface AdderProps {
  readonly picture: string;
  readonly title: string;
  /** Undefined for a button that does its work at once. */
  readonly pressed: boolean | undefined;
  readonly onClick: () => void;
}

function Adder({ picture, title, pressed, onClick }: AdderProps) {
  return (
    <button type="button" className="adder" aria-pressed={pressed} onClick={onClick}>
      <svg viewBox="0 0 26 28" aria-hidden="true">
        <path d={picture} />
      </svg>
      {title}
    </button>
  );
}
