/** "What have you got?": a few answers, all of them given already, and a piece to begin with. */
import { type FormEvent, useEffect, useRef, useState } from 'react';
import { chipNames, chips } from '../../../engine/parts/chips.ts';
import { useSession } from '../session/context.ts';
import { openNew, openSample, type Sample, samples } from '../session/files.ts';
import type { BenchName } from '../shell/benches.ts';
import { type Answers, firstPiece, type LightKind, lightKinds, usualAnswers, withSupply } from './answers.ts';
import { Choice } from './Choice.tsx';
import { drawingOf } from './drawings.tsx';
import { FirstPicture } from './FirstPicture.tsx';
import { GlimpsePicture } from './GlimpsePicture.tsx';
import { LightDetails } from './LightDetails.tsx';
import { SupplyDetails } from './SupplyDetails.tsx';
import { supplies, supplyKinds } from './supplies.ts';

const lightTitles: Record<LightKind, string> = {
  strip: 'A strip',
  ring: 'A ring',
  grid: 'A grid',
  pixels: 'Single pixels',
};

export function StartDialog() {
  const session = useSession();
  const dialog = useRef<HTMLDialogElement>(null);
  const [answers, setAnswers] = useState<Answers>(usualAnswers);
  const set = (change: Partial<Answers>) => setAnswers((before) => ({ ...before, ...change }));
  const close = () => session.desk.starting.set(false);
  useEffect(() => dialog.current?.showModal(), []);

  const begin = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { submitter } = event.nativeEvent as SubmitEvent;
    const bench: BenchName = submitter?.dataset.bench === 'place' ? 'place' : 'compose';
    if (!(await openNew(session, firstPiece(answers)))) return;
    session.desk.bench.set(bench);
    close();
  };
  const takeApart = async (sample: Sample) => {
    if (await openSample(session, sample)) close();
  };

  return (
    <dialog ref={dialog} className="start" aria-labelledby="start" onClose={close}>
      <form onSubmit={(event) => void begin(event)}>
        <header>
          <h2 id="start">What have you got?</h2>
          <p className="whisper">Change what is different with you. All of it can be changed later.</p>
          <button type="button" className="quiet icon shut" aria-label="Close" onClick={close}>
            <svg viewBox="0 0 20 20" aria-hidden="true">
              <path d="M5 5 L15 15 M15 5 L5 15" />
            </svg>
          </button>
        </header>
        <div className="answers">
          <Choice
            question="What lights up first?"
            options={lightKinds.map((kind) => ({
              value: kind,
              title: lightTitles[kind],
              drawing: drawingOf(kind),
            }))}
            value={answers.light}
            onChange={(light) => set({ light })}
          >
            <LightDetails answers={answers} set={set} />
          </Choice>
          <Choice
            question="What does it run from?"
            options={supplyKinds.map((kind) => ({ value: kind, title: supplies[kind].title }))}
            value={answers.supply}
            onChange={(supply) => setAnswers((before) => withSupply(before, supply))}
          >
            <SupplyDetails answers={answers} set={set} />
          </Choice>
          <Choice
            question="Which chip is on the board?"
            hint="Printed on the largest black part; a phone’s camera helps to read it."
            options={chipNames.map((name) => ({
              value: name,
              title: name === 'host' ? 'None yet' : chips[name].title.split(' at ')[0]!,
              ...(!chips[name].ready && { note: 'no sketch for it yet' }),
            }))}
            value={answers.board}
            onChange={(board) => set({ board })}
          />
        </div>
        <aside>
          <FirstPicture answers={answers} />
          <label className="name">
            Call it
            <input
              type="text"
              required
              maxLength={40}
              pattern=".*\S.*"
              value={answers.name}
              onChange={({ target }) => set({ name: target.value })}
            />
          </label>
          <button type="submit" className="wide" data-bench="compose">
            Put it on the bench
          </button>
          <button type="submit" className="quiet wide" data-bench="place">
            There is more to lay out
          </button>
        </aside>
      </form>
      <section className="take-apart" aria-labelledby="take-apart">
        <h3 id="take-apart">Or take one apart</h3>
        <ul>
          {samples.map((sample) => (
            <li key={sample.fileName}>
              <button type="button" className="sample" onClick={() => void takeApart(sample)}>
                <GlimpsePicture sample={sample} />
                <span>{sample.title}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
    </dialog>
  );
}
