/** What the supply gives, by the figure printed on it, and what to watch out for with it. */
import { cautions } from '../../../engine/safety/cautions.ts';
import { Ask } from '../shell/Ask.tsx';
import { Amount } from './Amount.tsx';
import type { Answers } from './answers.ts';
import { supplies } from './supplies.ts';

interface Props {
  readonly answers: Answers;
  readonly set: (change: Partial<Answers>) => void;
}

/** More than any supply that is worn. */
const mostAmperes = 20;

export function SupplyDetails({ answers, set }: Props) {
  const choice = supplies[answers.supply];
  const watch = cautions.filter(({ code }) => choice.cautions.includes(code));
  return (
    <>
      <Amount
        label="It gives"
        unit="A"
        value={answers.milliamps / 1000}
        min={0.05}
        max={mostAmperes}
        step="any"
        onChange={(amperes) => set({ milliamps: Math.round(amperes * 1000) })}
      />
      <p className="whisper printed-where">
        {choice.printed}
        <Ask about="the limit" question="What is this figure for?">
          It becomes the limit of the piece: light that would draw more is dimmed, on this page and on the
          chip alike.
          {choice.keepAliveMilliamps > 0 &&
            ` Many power banks switch off when little is drawn, so this piece never draws less than ` +
              `${choice.keepAliveMilliamps} mA: in the dark it goes on glowing a little.`}
        </Ask>
      </p>
      {watch.length > 0 && (
        <ul className="watch" aria-label="Watch out">
          {watch.map(({ code, short }) => (
            <li key={code}>{short}</li>
          ))}
        </ul>
      )}
    </>
  );
}
