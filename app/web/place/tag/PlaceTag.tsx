/** The tag at the right: what is in hand and everything that can be set on it, in sections. */
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import { useRunsInHand } from '../in-hand.ts';
import { runWords } from '../words.ts';
import { PieceSections } from './PieceSections.tsx';
import { RunSections } from './RunSections.tsx';

export function PlaceTag({ piece }: { piece: Piece }) {
  const session = useSession();
  const inHand = useRunsInHand(piece);
  const faults = usePart(session.bench, (bench) => bench.editFaults);
  const [first, ...others] = inHand;
  return (
    <aside className="place-tag" aria-label="What is in hand">
      {first === undefined && <p className="whisper">Nothing is in hand. Click a run, or lay one down.</p>}
      {first !== undefined && (
        <header>
          <h2>{others.length === 0 ? first.name : `${inHand.length} runs`}</h2>
          <p className="whisper">
            {others.length === 0 ? runWords(first) : inHand.map(({ name }) => name).join(', ')}
          </p>
        </header>
      )}
      {first !== undefined && others.length === 0 && <RunSections run={first} />}
      <PieceSections piece={piece} />
      {faults.length > 0 && (
        <p className="fault" role="alert">
          {faults[0]!.message} {faults[0]!.advice}
        </p>
      )}
    </aside>
  );
}
