/** Single pixels of a run: cut out, or hidden. On the table by tapping, here by small toggles. */
import { type KeyboardEvent, useRef, useState } from 'react';
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useHand } from '../hand.ts';
import { pixelWords } from '../words.ts';
import { addressIn, type PixelState, setStates, statesOf, tapped } from './states.ts';
import '../../styles/place-pixels.css';

type Mending = 'hidden' | 'removed';

const words: Readonly<Record<PixelState, string>> = {
  lit: 'lit',
  hidden: 'hidden',
  removed: 'cut out',
};

export function PixelsSection({ run }: { run: Run }) {
  const hand = useHand();
  const tool = useStore(hand.tool);
  const [chosen, setChosen] = useState<Mending>('removed');
  const mends = tool.kind === 'mend' && tool.run === run.name;
  const to = mends ? tool.to : chosen;
  const choose = (wanted: Mending) => {
    setChosen(wanted);
    if (mends) hand.take({ kind: 'mend', run: run.name, to: wanted });
  };
  return (
    <div className="pixels">
      <fieldset className="mend-choice">
        <legend className="unseen">What a tap does to a pixel</legend>
        {(['removed', 'hidden'] as const).map((wanted) => (
          <label key={wanted}>
            <input type="radio" name="mend" checked={to === wanted} onChange={() => choose(wanted)} />
            {wanted === 'removed' ? 'cut out' : 'hide'}
          </label>
        ))}
        <Ask about="cut out and hidden">
          Cut out: the pixel is gone from the strip, a wire bridges the gap, and all pixels behind it move up
          by one number. Hidden: it stays on the strip and passes the signal on, but is never lit, as in a
          seam.
        </Ask>
      </fieldset>
      <button
        type="button"
        className="quiet wide"
        aria-pressed={mends}
        onClick={() => (mends ? hand.putAway() : hand.take({ kind: 'mend', run: run.name, to }))}
      >
        {mends ? 'Done' : 'Tap pixels on the table'}
      </button>
      <Toggles run={run} to={to} />
      <p className="whisper">{summary(run)}</p>
    </div>
  );
}

function summary(run: Run): string {
  const states = statesOf(run);
  const count = (state: PixelState) => states.filter((each) => each === state).length;
  const parts = [pixelWords(count('lit') + count('hidden'))];
  if (count('hidden') > 0) parts.push(`${count('hidden')} of them hidden`);
  if (count('removed') > 0) parts.push(`${count('removed')} cut out`);
  return parts.join(', ');
}

/** One tab stop; arrows go from pixel to pixel. */
function Toggles({ run, to }: { run: Run; to: Mending }) {
  const session = useSession();
  const list = useRef<HTMLDivElement>(null);
  const [current, setCurrent] = useState(0);
  const states = statesOf(run);
  const at = Math.min(current, states.length - 1);

  const go = (event: KeyboardEvent) => {
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = Math.min(states.length - 1, Math.max(0, step(at, states.length)));
    setCurrent(next);
    (list.current?.children[next] as HTMLElement | undefined)?.focus();
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset does not lay out its children.
    <div
      className="pixel-toggles"
      role="group"
      aria-label={`Pixels of ${run.name}`}
      ref={list}
      onKeyDown={go}
    >
      {states.map((state, position) => {
        const address = addressIn(states, position);
        return (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a pixel is its position.
            key={position}
            type="button"
            data-state={state}
            tabIndex={position === at ? 0 : -1}
            aria-label={`Pixel ${position}, ${words[state]}`}
            title={address === undefined ? 'cut out: no number' : `number ${address} of this run`}
            onFocus={() => setCurrent(position)}
            onClick={() => session.edit(setStates(run, [position], tapped(state, to)))}
          >
            {position}
          </button>
        );
      })}
    </div>
  );
}

const steps: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowRight: (at) => at + 1,
  ArrowLeft: (at) => at - 1,
  ArrowDown: (at) => at + 1,
  ArrowUp: (at) => at - 1,
  PageDown: (at) => at + 10,
  PageUp: (at) => at - 10,
  Home: () => 0,
  End: (_, count) => count - 1,
};
