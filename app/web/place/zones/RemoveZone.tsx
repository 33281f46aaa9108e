/** Taking a zone away; where clips play on it, it is asked what becomes of them. */
import { useId, useState } from 'react';
import { removeZone } from '../../../../engine/edit/offers/remove.ts';
import { holdersInWords, holdersOf } from '../../../../engine/edit/references.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useHand } from '../hand.ts';
import { runsOf } from '../surface/places.ts';

/** In the list of what clips may play on instead: nothing, so that they go too. */
const nothing = '';

export function RemoveZone({ piece, zone }: { piece: Piece; zone: string }) {
  const session = useSession();
  const hand = useHand();
  const [asks, setAsks] = useState(false);
  const [instead, setInstead] = useState('all');
  const id = useId();
  const holders = holdersOf(piece, 'zone', zone);
  const remove = (then?: string) => {
    session.edit(removeZone(piece, zone, then));
    hand.zone.set(null);
    session.desk.pointed.set([]);
  };
  if (!asks || holders.length === 0) {
    return (
      <button
        type="button"
        className="quiet small"
        onClick={() => (holders.length === 0 ? remove() : setAsks(true))}
      >
        Remove
      </button>
    );
  }
  const others = piece.zones.map(({ name }) => name).filter((name) => name !== zone);
  return (
    <fieldset className="removing">
      <legend>Clips of {holdersInWords(holders)} play on it.</legend>
      <label htmlFor={id}>They play then on</label>
      <select id={id} value={instead} onChange={(event) => setInstead(event.target.value)}>
        {['all', ...runsOf(piece).map(({ name }) => name), ...others].map((name) => (
          <option key={name}>{name}</option>
        ))}
        <option value={nothing}>nothing: remove them too</option>
      </select>
      <button
        type="button"
        className="small"
        onClick={() => remove(instead === nothing ? undefined : instead)}
      >
        Remove
      </button>
      <button type="button" className="quiet small" onClick={() => setAsks(false)}>
        Keep it
      </button>
    </fieldset>
  );
}
