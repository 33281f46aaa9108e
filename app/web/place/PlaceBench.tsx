/** The bench where runs are laid out: where each pixel lies on the bench and on the body. */
import { useState } from 'react';
import { sides } from '../../../engine/edit/kinds/runs.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { AddBar } from './AddBar.tsx';
import { Hand, HandContext } from './hand.ts';
import { PlaceTable } from './PlaceTable.tsx';
import { PlaceTag } from './tag/PlaceTag.tsx';

export function PlaceBench() {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const side = useStore(session.desk.side);
  const [hand] = useState(() => new Hand());
  if (piece === undefined) return <section className="place" aria-label="Place" />;
  return (
    <HandContext value={hand}>
      <section
        className="place"
        aria-label="Place"
        data-side={side}
        onKeyDown={({ key }) => {
          if (key === 'Escape') hand.putAway();
        }}
      >
        <AddBar piece={piece} />
        <div className="tables">
          {sides.map((each) => (
            <PlaceTable key={each} piece={piece} side={each} />
          ))}
        </div>
        <PlaceTag piece={piece} />
      </section>
    </HandContext>
  );
}
