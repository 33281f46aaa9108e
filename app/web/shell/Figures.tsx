/** One line of figures, always in view: what the piece draws and what it takes of the chip. */
import { useEffect, useRef } from 'react';
import { chips } from '../../../engine/parts/chips.ts';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { milliamps, percent } from '../session/words.ts';
import { Ask } from './Ask.tsx';
import { Cautions } from './Cautions.tsx';

export function Figures() {
  const session = useSession();
  const { looks, stale } = useStore(session.loft.power);
  const { look, brightness } = useStore(session.playing);
  const figures = looks?.[look];
  return (
    <footer className="figures" data-stale={stale}>
      <dl>
        <div>
          <dt>now</dt>
          <dd>
            <NowMilliamps />
          </dd>
        </div>
        <div>
          <dt>average</dt>
          <dd>{figures === undefined ? '…' : milliamps(figures.averageMilliamps)}</dd>
        </div>
        <div>
          <dt>
            peak
            <Ask about="peak" question="What is peak?">
              The most this look draws at any moment of one loop.
            </Ask>
          </dt>
          <dd>{figures === undefined ? '…' : milliamps(figures.peakMilliamps)}</dd>
        </div>
        <div className="aside">
          <dt>of this look, at</dt>
          <dd>{percent(brightness)}</dd>
        </div>
        <ChipFigures />
      </dl>
      <Cautions />
    </footer>
  );
}

/** A figure that changes with every frame cannot be read; five a second can. */
const readableEveryMs = 200;

function NowMilliamps() {
  const session = useSession();
  const text = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let shownAt = 0;
    let timer = 0;
    let latest = 0;
    const show = () => {
      timer = 0;
      shownAt = performance.now();
      if (text.current !== null) text.current.textContent = milliamps(latest);
    };
    const unlisten = session.frames.listen((frame) => {
      latest = frame.milliamps;
      const wait = shownAt + readableEveryMs - performance.now();
      if (timer === 0) timer = window.setTimeout(show, Math.max(0, wait));
    });
    return () => {
      unlisten();
      window.clearTimeout(timer);
    };
  }, [session]);
  return <span ref={text}>…</span>;
}

/** Estimates of the chosen board; nothing where they are not known. */
function ChipFigures() {
  const session = useSession();
  const { sketch, board } = useStore(session.loft.sketch);
  const estimate = sketch?.estimate;
  if (estimate == null || board === null) return null;
  const { flashBytes } = chips[board];
  return (
    <>
      <div className="chip">
        <dt>
          program memory<span className="about">, about</span>
        </dt>
        <dd>
          {kilobytes(estimate.flashBytes)}
          {flashBytes === null ? '' : ` of ${kilobytes(flashBytes)}`}
        </dd>
      </div>
      <div className="chip">
        <dt>
          a frame<span className="about">, about</span>
        </dt>
        <dd>{(1000 / estimate.framesPerSecond).toFixed(1)} ms</dd>
      </div>
    </>
  );
}

function kilobytes(bytes: number): string {
  return `${Number((bytes / 1024).toFixed(1))} KB`;
}
