/** What stands around a table: its name, zoom by buttons, and a word on what to do. */
import type { Side } from '../../../engine/edit/kinds/runs.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { useHand } from './hand.ts';
import { useCamera } from './surface/context.ts';
import { TableHelp } from './TableHelp.tsx';

const names: Readonly<Record<Side, { readonly title: string; readonly what: string }>> = {
  flat: { title: 'Flat', what: 'as it lies on the bench, true to size' },
  worn: { title: 'Worn', what: 'as it is seen on the body' },
};

const zoomFactor = 1.4;

export function TableFrame({ piece }: { piece: Piece }) {
  const view = useCamera();
  const { side, zoom } = view;
  const { title, what } = names[side];
  const hand = useHand();
  const snaps = useStore(hand.snaps);
  return (
    <>
      <p className="table-name">
        <b>{title}</b> <span>{what}</span>
      </p>
      <div className="zooming">
        <TableHelp />
        <button
          type="button"
          className="quiet icon"
          aria-label={`Snap, ${title}`}
          aria-pressed={snaps}
          title={snaps ? 'What is moved comes to rest in line' : 'What is moved stays where it is dropped'}
          onClick={() => hand.snaps.set(!snaps)}
        >
          <svg viewBox="0 0 18 18" aria-hidden="true">
            <path d="M4 2.500v6a5 5 0 0 0 10 0v-6M2.500 6h3M12.500 6h3" />
          </svg>
        </button>
        <button
          type="button"
          className="quiet icon"
          aria-label={`Zoom in, ${title}`}
          onClick={() => zoom(zoomFactor)}
        >
          <svg viewBox="0 0 18 18" aria-hidden="true">
            <path d="M9 3.500v11M3.500 9h11" />
          </svg>
        </button>
        <button
          type="button"
          className="quiet icon"
          aria-label={`Zoom out, ${title}`}
          onClick={() => zoom(1 / zoomFactor)}
        >
          <svg viewBox="0 0 18 18" aria-hidden="true">
            <path d="M3.500 9h11" />
          </svg>
        </button>
        <button
          type="button"
          className="quiet icon"
          aria-label={`Fit, ${title}`}
          title="Show all"
          onClick={() => view.fit()}
        >
          <svg viewBox="0 0 18 18" aria-hidden="true">
            <path d="M2.500 6.500v-4h4M11.500 2.500h4v4M15.500 11.500v4h-4M6.500 15.500h-4v-4" />
          </svg>
        </button>
      </div>
      {side === 'worn' && <BorrowedWords piece={piece} />}
      <FaultNearby />
    </>
  );
}

/** Runs without a worn place of their own. */
function BorrowedWords({ piece }: { piece: Piece }) {
  const borrowed = piece.lines.flatMap(({ runs }) => runs.filter(({ worn }) => worn === undefined));
  if (borrowed.length === 0) return null;
  const what = borrowed.length === 1 ? borrowed[0]!.name : `${borrowed.length} pale runs`;
  const [lies, it] = borrowed.length === 1 ? ['lies', 'it'] : ['lie', 'one'];
  return (
    <p className="table-words">
      {what} {lies} here as on the flat table. Move {it} to give it a worn place of its own.
    </p>
  );
}

/** On a phone the tag, which tells why something was refused, is out of sight. */
function FaultNearby() {
  const session = useSession();
  const [fault] = usePart(session.bench, (bench) => bench.editFaults);
  if (fault === undefined) return null;
  return (
    <p className="table-fault" aria-hidden="true">
      {fault.message} {fault.advice}
    </p>
  );
}
