/** Before a run goes that is in use: who uses it, and what goes with it. */
import { useEffect, useRef } from 'react';
import { holdersInWords, holdersOf } from '../../../../engine/edit/references.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { removeHeld } from '../move/actions.ts';

export function RemoveQuestion({ piece, inHand }: { piece: Piece; inHand: readonly Run[] }) {
  const session = useSession();
  const hand = useHand();
  const about = useStore(hand.asksToRemove);
  // Whoever takes something else in hand has answered.
  const asked =
    about.length > 0 && inHand.length === about.length && inHand.every(({ name }) => about.includes(name));
  const no = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked) no.current?.focus();
  }, [asked]);
  if (!asked) return null;
  const used = inHand.filter(({ name }) => holdersOf(piece, 'zone', name).length > 0);
  return (
    <div className="remove-question" role="alertdialog" aria-label="Remove what is in use?">
      {used.map(({ name }) => (
        <p key={name}>
          <b>{name}</b> is in use by {holdersInWords(holdersOf(piece, 'zone', name))}.
        </p>
      ))}
      <p className="whisper">Their clips on it go too. Undo brings all of it back.</p>
      <div className="button-row">
        <button
          type="button"
          onClick={() => {
            hand.asksToRemove.set([]);
            removeHeld(session);
          }}
        >
          Remove it all
        </button>
        <button type="button" className="quiet" ref={no} onClick={() => hand.asksToRemove.set([])}>
          Keep it
        </button>
      </div>
    </div>
  );
}
