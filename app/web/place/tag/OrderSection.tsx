/** The order in which the data runs through the runs: dragged, or moved by the buttons of a row. */
import { type PointerEvent, useRef } from 'react';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { takeRuns, toggleRun } from '../in-hand.ts';
import { addressesOf } from '../surface/places.ts';
import { indexAt } from './order.ts';

interface Props {
  readonly piece: Piece;
  readonly inHand: readonly Run[];
}

export function OrderSection({ piece, inHand }: Props) {
  return piece.lines.map(({ pin, runs }) => (
    <div key={pin} className="line-order">
      <p className="whisper">From pin {pin} of the board, in this order:</p>
      <OrderedRuns piece={piece} runs={runs} inHand={inHand} />
    </div>
  ));
}

function OrderedRuns({ piece, runs, inHand }: Props & { runs: readonly Run[] }) {
  const session = useSession();
  const list = useRef<HTMLOListElement>(null);

  const drag = (down: PointerEvent<HTMLElement>, run: Run) => {
    if (down.button !== 0) return;
    const handle = down.currentTarget;
    const rows = [...list.current!.children].map((row) => row.getBoundingClientRect());
    session.endDrag();
    handle.setPointerCapture(down.pointerId);
    const over = new AbortController();
    const follow = (event: Event) => {
      const to = indexAt(rows, (event as globalThis.PointerEvent).clientY);
      session.edit({ kind: 'reorder-run', run: run.name, to }, 'pull');
    };
    const end = () => {
      over.abort();
      session.endDrag();
    };
    handle.addEventListener('pointermove', follow, { signal: over.signal });
    handle.addEventListener('pointerup', end, { signal: over.signal });
    handle.addEventListener('pointercancel', end, { signal: over.signal });
  };

  const move = (run: Run, by: number) => {
    session.edit({ kind: 'reorder-run', run: run.name, to: runs.indexOf(run) + by });
  };

  return (
    <ol ref={list}>
      {runs.map((run, index) => {
        const { name } = run;
        const addresses = addressesOf(piece, [name]);
        return (
          <li key={name} data-taken={inHand.includes(run)}>
            <span
              className="grip"
              title="Drag to another place in the line"
              onPointerDown={(event) => drag(event, run)}
            >
              <svg viewBox="0 0 10 16" aria-hidden="true">
                <path d="M3 3h0M7 3h0M3 8h0M7 8h0M3 13h0M7 13h0" />
              </svg>
            </span>
            <button
              type="button"
              className="order-name"
              aria-pressed={inHand.includes(run)}
              onClick={({ shiftKey }) => (shiftKey ? toggleRun(session, name) : takeRuns(session, [name]))}
            >
              {name}
            </button>
            <span className="addresses">{addressWords(addresses)}</span>
            <button
              type="button"
              className="quiet icon small"
              aria-label={`${name} earlier in the line`}
              disabled={index === 0}
              onClick={() => move(run, -1)}
            >
              <svg viewBox="0 0 18 18" aria-hidden="true">
                <path d="M5 11l4-4 4 4" />
              </svg>
            </button>
            <button
              type="button"
              className="quiet icon small"
              aria-label={`${name} later in the line`}
              disabled={index === runs.length - 1}
              onClick={() => move(run, 1)}
            >
              <svg viewBox="0 0 18 18" aria-hidden="true">
                <path d="M5 7l4 4 4-4" />
              </svg>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** `0 to 59` */
function addressWords(addresses: readonly number[]): string {
  if (addresses.length === 0) return 'none';
  const [first, last] = [addresses[0]!, addresses.at(-1)!];
  return first === last ? String(first) : `${first} to ${last}`;
}
