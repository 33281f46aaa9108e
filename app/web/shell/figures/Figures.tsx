/** One line of figures, always in view: what the piece draws and what it takes of the chip. */
import { useSession } from '../../session/context.ts';
import { usePart, useStore } from '../../session/store.ts';
import { milliamps, percent } from '../../session/words.ts';
import { Ask } from '../Ask.tsx';
import { Cautions } from '../Cautions.tsx';
import { ChipFigures } from './ChipFigures.tsx';
import { Figure } from './Figure.tsx';
import { CurrentMadeOf, NowMadeOf } from './MadeOf.tsx';
import { NowMilliamps } from './NowMilliamps.tsx';

export function Figures() {
  const session = useSession();
  const { looks, stale } = useStore(session.loft.power);
  const { look, brightness } = useStore(session.playing);
  const limit = usePart(session.bench, ({ open }) => open?.piece.supply.limitMilliamps);
  const figures = looks?.[look];
  return (
    <footer className="figures" data-stale={stale}>
      <dl>
        <Figure
          name="now"
          answer={
            <Ask about="the current now" question="What is “now” made of?">
              <NowMadeOf />
            </Ask>
          }
        >
          <NowMilliamps />
        </Figure>
        <Figure
          name="average"
          answer={
            <Ask about="the average" question="What is “average” made of?">
              The mean of all frames of one loop of this look, at {percent(brightness)} brightness. Batteries
              last by it.
              {figures !== undefined && <CurrentMadeOf milliamps={figures.averageMilliamps} />}
            </Ask>
          }
        >
          {figures === undefined ? '…' : milliamps(figures.averageMilliamps)}
        </Figure>
        <Figure
          name="peak"
          answer={
            <Ask about="the peak" question="What is “peak” made of?">
              The strongest frame of one loop of this look, at {percent(brightness)} brightness. Supply, fuse
              and wires must bear it.
              {figures !== undefined && <CurrentMadeOf milliamps={figures.peakMilliamps} />}
            </Ask>
          }
        >
          {figures === undefined ? '…' : milliamps(figures.peakMilliamps)}
        </Figure>
        {limit !== undefined && (
          <Figure name="limit" className="limit">
            <button
              type="button"
              className="quiet small"
              aria-label={`Limit ${milliamps(limit)}: see to the supply`}
              onClick={() => session.desk.supplyOpen.set(true)}
            >
              {milliamps(limit)}
            </button>
          </Figure>
        )}
        <ChipFigures />
      </dl>
      <Cautions />
    </footer>
  );
}
