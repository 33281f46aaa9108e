/** The swatch book, open: every pattern there is, to be looked through, searched and used. */
import { useEffect, useId, useMemo, useState } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { percent } from '../session/words.ts';
import { Fault } from '../shell/Fault.tsx';
import { useAttempt } from '../shell/use-attempt.ts';
import { useRoving } from '../shell/use-roving.ts';
import { type Laying, layAtHand, layOwn } from './laying.ts';
import { SwatchCard } from './SwatchCard.tsx';
import { useSpot } from './spot.ts';
import { grouped, type Swatch, searched, swatchesOf } from './swatch.ts';

export function SwatchBook() {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const pixels = usePart(session.bench, (bench) => bench.open?.view.hidden.length ?? 0);
  const library = useStore(session.loft.library);
  const weights = useStore(session.loft.swatches.weights);
  const { fault, attempt } = useAttempt();
  const spot = useSpot();
  const search = useId();
  const [text, setText] = useState('');
  const patterns = piece?.patterns;
  const all = useMemo(
    () => (patterns === undefined ? [] : swatchesOf({ patterns }, library)),
    [patterns, library],
  );
  const groups = useMemo(() => grouped(searched(all, text)), [all, text]);
  const roving = useRoving<HTMLDivElement>(
    groups.flatMap(({ swatches }) => swatches.map(({ pattern }) => pattern)),
  );

  useEffect(() => {
    session.loft.swatches.want(all.map(({ pattern }) => pattern));
    return () => session.loft.swatches.want([]);
  }, [session, all]);

  if (piece === undefined) return null;
  const use = (laying: Laying | null, title: string) => {
    if (laying === null || !attempt(laying.edit)) return;
    session.selected.set(laying.at);
    session.announcement.set(`${title} is laid on ${piece.looks[laying.at.look]!.name}.`);
  };
  const card = (swatch: Swatch) => (
    <SwatchCard
      key={swatch.pattern}
      swatch={swatch}
      weight={weights.of.get(swatch.pattern)}
      frameMilliseconds={piece.tickMilliseconds}
      roving={roving.item(swatch.pattern)}
      isHome={roving.home === swatch.pattern}
      onLay={() => use(layAtHand(piece, swatch.pattern, spot()), swatch.title)}
      onOwn={() => use(layOwn(piece, swatch, spot()), `A pattern of your own, from ${swatch.title},`)}
    />
  );
  return (
    <div className="swatch-book">
      <div className="book-head">
        <label className="unseen" htmlFor={search}>
          Search the swatches
        </label>
        <input
          id={search}
          type="search"
          placeholder="flame, slow, rings…"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <p className="whisper">
          Tap one to lay it, or carry it to the loom or the picture. <Measures pixels={pixels} />
        </p>
        <Fault fault={fault} />
      </div>
      <div className="book-pages" ref={roving.row}>
        {groups.map(({ title, swatches }) => (
          <section key={title} aria-label={title}>
            <h2>{title}</h2>
            <ul>{swatches.map(card)}</ul>
          </section>
        ))}
        {groups.length === 0 && <p className="whisper">No swatch goes by these words.</p>}
      </div>
    </div>
  );
}

/** What the figures on the swatches are made of. */
function Measures({ pixels }: { pixels: number }) {
  const session = useSession();
  const { of } = useStore(session.loft.swatches.weights);
  const brightness = usePart(session.playing, (playing) => playing.brightness);
  const limit = usePart(session.bench, (bench) => bench.open?.view.limitMilliamps);
  const held = [...of.values()].some(({ limited }) => limited);
  return (
    <>
      The figures are for all {pixels} pixels at {percent(brightness)}: time to draw a frame, typical current
      {held ? `; * dimmed at times by the limit of ${limit} mA` : ''}.
    </>
  );
}
