/** Laying curves: drawn spot by spot, as a first one to bend, or along a drawing. */
import { lazy, Suspense, useState } from 'react';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { boxAround } from '../surface/box.ts';
import { placesOn, runsOf } from '../surface/places.ts';
import { layLines } from './lay-lines.ts';
import { lineThrough } from './nodes.ts';

const DrawingDialog = lazy(() =>
  import('./DrawingDialog.tsx').then(({ DrawingDialog }) => ({ default: DrawingDialog })),
);

/** A gentle wave of half a metre, in millimetres from its middle. */
const wave = [
  [-240, 0],
  [-80, 50],
  [80, -50],
  [240, 0],
] as const;

interface Props {
  readonly piece: Piece;
  /** Drawn by the maker, not laid at once. */
  readonly byHand: boolean;
}

export function CurveAdders({ piece, byHand }: Props) {
  const session = useSession();
  const hand = useHand();
  const tool = useStore(hand.tool);
  const [asks, setAsks] = useState(false);
  const draws = tool.kind === 'draw';

  const curve = () => {
    session.desk.side.set('flat');
    if (draws) hand.putAway();
    else if (byHand) hand.take({ kind: 'draw' });
    else {
      const box = boxAround(placesOn(runsOf(piece), 'flat'));
      const [x, y] = box === undefined ? [0, 0] : [(box.left + box.right) / 2, box.bottom - 120];
      layLines(
        session,
        hand,
        [
          lineThrough(
            wave.map(([dx, dy]) => [x + dx, y + dy]),
            false,
          ),
        ],
        'curve',
      );
    }
  };

  return (
    <>
      <button type="button" className="adder" aria-pressed={byHand ? draws : undefined} onClick={curve}>
        <svg viewBox="0 0 26 28" aria-hidden="true">
          <path d="M3 19h0M7 12.500h0M12 12.500h0M15.500 17h0M20 17.500h0M23 11h0" />
        </svg>
        Curve
      </button>
      <button type="button" className="adder" aria-haspopup="dialog" onClick={() => setAsks(true)}>
        <svg viewBox="0 0 26 28" aria-hidden="true">
          <path d="M6 4h10l5 5v15H6z" className="sheet" />
          <path d="M10 18h0M13.500 14h0M17 18h0" />
        </svg>
        From a drawing
      </button>
      {asks && (
        <Suspense>
          <DrawingDialog piece={piece} onClose={() => setAsks(false)} />
        </Suspense>
      )}
    </>
  );
}
