/** The zones of the piece: which there are, making one, and the one in hand with all that can be changed. */
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useHand } from '../hand.ts';
import { runsInHand } from '../in-hand.ts';
import { runsOf } from '../surface/places.ts';
import { pixelWords } from '../words.ts';
import { layoutOf, pixelsOfZone } from './layout-of.ts';
import { makeZone } from './make.ts';
import { pointing, useNothingPointedBehind } from './point.ts';
import { ZoneDrawing } from './ZoneDrawing.tsx';
import { ZoneForm } from './ZoneForm.tsx';
import '../../styles/place-zones.css';

export function ZonesSection({ piece }: { piece: Piece }) {
  const hand = useHand();
  const inHand = useStore(hand.zone);
  useNothingPointedBehind();
  return (
    <div className="zones">
      {piece.zones.length > 0 ? (
        <ul className="zone-list">
          {piece.zones.map(({ name }, index) => (
            <li key={name}>
              <ZoneRow piece={piece} zone={name} isOpen={name === inHand} />
              {name === inHand && <ZoneForm piece={piece} zone={piece.zones[index]!} index={index} />}
            </li>
          ))}
        </ul>
      ) : (
        <p className="whisper">
          No zone of your own yet. Each run is one by itself, and so is the whole piece.
        </p>
      )}
      <Making />
      <Given piece={piece} />
    </div>
  );
}

function ZoneRow({ piece, zone, isOpen }: { piece: Piece; zone: string; isOpen: boolean }) {
  const session = useSession();
  const hand = useHand();
  const side = useStore(session.desk.side);
  const layout = layoutOf(piece);
  const { entries, count } = layout.zones.get(zone) ?? { entries: [], count: 0 };
  return (
    <button
      type="button"
      className="zone-row"
      aria-expanded={isOpen}
      onClick={() => hand.zone.set(isOpen ? null : zone)}
      {...pointing(session, () => pixelsOfZone(layout, zone))}
    >
      <ZoneDrawing layout={layout} zone={zone} side={side} />
      <span>
        <b>{zone}</b>
        <small>
          {pixelWords(entries.length)}
          {count !== entries.length && `, ${count} steps`}
        </small>
      </span>
    </button>
  );
}

function Making() {
  const session = useSession();
  const hand = useHand();
  const tool = useStore(hand.tool);
  const held = useStore(session.desk.runsInHand);
  const lassoing = tool.kind === 'lasso' && tool.into === null;
  return (
    <div className="zone-making">
      <button
        type="button"
        className="quiet"
        aria-pressed={lassoing}
        onClick={() => (lassoing ? hand.putAway() : hand.take({ kind: 'lasso', into: null }))}
      >
        Lasso
      </button>
      <button type="button" className="quiet" onClick={() => makeZone(session, hand, sourceInHand(session))}>
        {held.length === 0 ? 'New zone' : 'Zone of what is in hand'}
      </button>
      <Ask about="making zones">
        With the lasso, draw a line around pixels on the table. The other button makes a zone of the runs in
        hand, or of everything; its parts are then chosen from a list.
      </Ask>
    </div>
  );
}

function sourceInHand(session: ReturnType<typeof useSession>) {
  const parts = runsInHand(session).map((run) => ({ kind: 'run' as const, run }));
  if (parts.length === 0) return { kind: 'all' as const };
  return parts.length === 1 ? parts[0]! : { kind: 'union' as const, of: parts };
}

/** What can be played on without making a zone first. */
function Given({ piece }: { piece: Piece }) {
  const session = useSession();
  const layout = layoutOf(piece);
  return (
    <details className="given">
      <summary>Always there</summary>
      <ul>
        {['all', ...runsOf(piece).map(({ name }) => name)].map((zone) => (
          <li key={zone}>
            <button type="button" className="chip" {...pointing(session, () => pixelsOfZone(layout, zone))}>
              {zone}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
