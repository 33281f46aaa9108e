/** The zone in hand: its name, its parts, the way round, and taking it away. */
import { useId, useState } from 'react';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useHand } from '../hand.ts';
import { RecipeFields } from './RecipeFields.tsx';
import { RemoveZone } from './RemoveZone.tsx';

interface Props {
  readonly piece: Piece;
  readonly zone: Piece['zones'][number];
  /** Its place in the list. */
  readonly index: number;
}

export function ZoneForm({ piece, zone, index }: Props) {
  const session = useSession();
  const move = (to: number) => session.edit({ kind: 'reorder-zone', zone: zone.name, to });
  return (
    <div className="zone-form">
      <ZoneName zone={zone.name} />
      <RecipeFields piece={piece} zone={zone} />
      <div className="zone-foot">
        <button
          type="button"
          className="quiet small"
          aria-label={`${zone.name} up in the list`}
          disabled={index === 0}
          onClick={() => move(index - 1)}
        >
          ↑
        </button>
        <button
          type="button"
          className="quiet small"
          aria-label={`${zone.name} down in the list`}
          disabled={index === piece.zones.length - 1}
          onClick={() => move(index + 1)}
        >
          ↓
        </button>
        <RemoveZone piece={piece} zone={zone.name} />
      </div>
    </div>
  );
}

/** Taken when the hand leaves the field or presses Enter; a name that cannot be is told, and put back. */
function ZoneName({ zone }: { zone: string }) {
  const session = useSession();
  const hand = useHand();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const take = () => {
    const name = typed?.trim();
    setTyped(null);
    if (name === undefined || name === '' || name === zone) return;
    // The form stays with its zone: whoever looks for the new name finds it already.
    session.edit({ kind: 'rename-zone', zone, name });
    if (session.bench.get().editFaults.length === 0) hand.zone.set(name.normalize('NFC'));
  };
  return (
    <div className="zone-name">
      <label htmlFor={id}>Name</label>
      <input
        id={id}
        type="text"
        value={typed ?? zone}
        maxLength={40}
        spellCheck={false}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') setTyped(null);
        }}
      />
    </div>
  );
}
