/** The tag at the right: what is in hand and everything that can be set on it, in sections. */
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { usePart, useStore } from '../../session/store.ts';
import { useRunsInHand } from '../in-hand.ts';
import { placesOf } from '../surface/places.ts';
import { pixelWords, runWords } from '../words.ts';
import { HeldButtons } from './HeldButtons.tsx';
import { NameField } from './NameField.tsx';
import { OrderSection } from './OrderSection.tsx';
import { PieceSections } from './PieceSections.tsx';
import { PlaceRows } from './PlaceRows.tsx';
import { RemoveQuestion } from './RemoveQuestion.tsx';
import { RunSections } from './RunSections.tsx';
import { Section } from './Section.tsx';
import { StripRows } from './StripRows.tsx';
import { isUnlit } from './unlit.ts';
import '../../styles/place-tag.css';

export function PlaceTag({ piece }: { piece: Piece }) {
  const session = useSession();
  const inHand = useRunsInHand(piece);
  const side = useStore(session.desk.side);
  const faults = usePart(session.bench, (bench) => bench.editFaults);
  const [only] = inHand.length === 1 ? inHand : [];
  return (
    <aside className="place-tag" aria-label="What is in hand">
      <Heading piece={piece} inHand={inHand} />
      {faults.length > 0 && (
        <p className="fault" role="alert">
          {faults[0]!.message} {faults[0]!.advice}
        </p>
      )}
      <RemoveQuestion piece={piece} inHand={inHand} />
      {only !== undefined && (
        <Section title="Strip" open key={`strip ${only.name}`}>
          <StripRows run={only} />
        </Section>
      )}
      {only !== undefined && (
        <Section
          title={side === 'flat' ? 'Place on the bench' : 'Place on the body'}
          key={`place ${only.name}`}
        >
          <PlaceRows run={only} />
        </Section>
      )}
      {inHand.length > 0 && (
        <Section title={only === undefined ? 'All of them' : 'Do with it'} open>
          <HeldButtons piece={piece} inHand={inHand} />
        </Section>
      )}
      {only !== undefined && <RunSections run={only} />}
      <Section title="Order of the data" open={inHand.length === 0}>
        <OrderSection piece={piece} inHand={inHand} />
      </Section>
      <PieceSections piece={piece} />
    </aside>
  );
}

function Heading({ piece, inHand }: { piece: Piece; inHand: readonly Run[] }) {
  const [first, ...others] = inHand;
  if (first === undefined) {
    const runs = piece.lines.flatMap((line) => line.runs);
    return (
      <header>
        <h2>{piece.name}</h2>
        <p className="whisper">
          {pixelWords(countOf(runs))} on {runs.length === 1 ? 'one run' : `${runs.length} runs`}. Click a run
          to take it in hand, or lay another one down.
        </p>
      </header>
    );
  }
  if (others.length === 0) {
    return (
      <header>
        <NameField key={first.name} name={first.name} />
        <p className="whisper">
          {runWords(first)}
          {isUnlit(piece, first.name) && '. No look lights it yet: lay a pattern on it in Compose.'}
        </p>
      </header>
    );
  }
  return (
    <header>
      <h2>{inHand.length} runs</h2>
      <p className="whisper">
        {inHand.map(({ name }) => name).join(', ')}: {pixelWords(countOf(inHand))}
      </p>
    </header>
  );
}

function countOf(runs: readonly Run[]): number {
  return runs.reduce((sum, run) => sum + placesOf(run.flat).length, 0);
}
