/**
 * The look that plays, on the loom: its cloth with its current beside it, and the cloth of every clip on
 * its track, all on one time axis that runs down.
 */
import { type CSSProperties, useCallback, useMemo, useRef } from 'react';
import type { Look, Piece } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import { LiveWeft } from '../cloth/LiveWeft.tsx';
import { useSize } from '../cloth/use-size.ts';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { milliamps } from '../session/words.ts';
import type { PieceView } from '../worker/protocol.ts';
import { ClipOnTrack } from './ClipOnTrack.tsx';
import { CurrentCurve, type CurveHandle } from './CurrentCurve.tsx';
import { LiveCurrent } from './LiveCurrent.tsx';
import { timeMarks } from './ruler.ts';
import { Shuttle } from './Shuttle.tsx';
import { useScrub } from './use-scrub.ts';

/** A thread as thick as this, in CSS pixels, still shows its colour and its gap. */
const threadHeight = 3;
/** Marks of the axis stand at least this far apart. */
const markHeight = 46;

export function Loom() {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  const at = usePart(session.playing, (playing) => playing.look);
  const look = open?.piece.looks[at];
  if (open === null || look === undefined) return <section className="loom" aria-label="Loom" />;
  return <LookOnLoom key={at} piece={open.piece} view={open.view} look={look} at={at} />;
}

interface Props {
  readonly piece: Piece;
  readonly view: PieceView;
  readonly look: Look;
  readonly at: number;
}

function LookOnLoom({ piece, view, look, at }: Props) {
  const bed = useRef<HTMLDivElement>(null);
  const curve = useRef<CurveHandle>(null);
  const { height } = useSize(bed);
  const rows = Math.round(height / threadHeight);
  const everyPixel = useMemo(() => Uint16Array.from(view.hidden, (_, pixel) => pixel), [view.hidden]);
  const scrub = useScrub(bed, look.lengthMilliseconds, 'taps');
  const onCurrents = useCallback((currents: Float32Array, known: number) => {
    curve.current?.show(currents, known);
  }, []);
  const names = look.tracks.map((track, index) => track.name ?? `track ${index + 1}`);
  const style = { '--tracks': names.length } as CSSProperties;

  return (
    <section className="loom" aria-label={`Loom: ${look.name}`} style={style}>
      <div className="loom-head" aria-hidden="true">
        <span />
        <div>
          <b>{look.name}</b>
          <LiveWeft pixels={everyPixel.length} />
        </div>
        <span>
          current
          <br />
          <i>limit {milliamps(view.limitMilliamps)}</i>
        </span>
        {names.map((name, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a track has no other identity than its rank
          <span key={index} title={name}>
            {name}
          </span>
        ))}
      </div>
      <div className="loom-bed" ref={bed}>
        <TimeAxis lengthMilliseconds={look.lengthMilliseconds} height={height} />
        <div className="warp whole" {...scrub}>
          {rows > 0 && (
            <ClothCanvas
              look={at}
              columns={everyPixel}
              rows={rows}
              fromMs={0}
              toMs={look.lengthMilliseconds}
              priority={1}
              onCurrents={onCurrents}
            />
          )}
        </div>
        <div className="warp current" {...scrub}>
          <CurrentCurve ref={curve} limitMilliamps={view.limitMilliamps} />
          <LiveCurrent curve={curve} lengthMilliseconds={look.lengthMilliseconds} />
        </div>
        {names.map((name, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a track has no other identity than its rank
          <div className="warp" key={index}>
            {rows > 0 &&
              view.clips
                .filter((clip) => clip.look === at && clip.track === index)
                .map((clip) => (
                  <ClipOnTrack
                    key={clip.clip}
                    piece={piece}
                    look={look}
                    trackName={name}
                    view={clip}
                    rows={rows}
                  />
                ))}
          </div>
        ))}
        <Shuttle
          lengthMilliseconds={look.lengthMilliseconds}
          tickMilliseconds={piece.tickMilliseconds}
          bed={bed}
        />
      </div>
    </section>
  );
}

function TimeAxis({ lengthMilliseconds, height }: { lengthMilliseconds: number; height: number }) {
  const marks = timeMarks(lengthMilliseconds, Math.max(2, height / markHeight));
  return (
    <div className="time-axis" aria-hidden="true">
      {marks.map(({ ms, text }) => (
        <span
          key={ms}
          data-end={ms === lengthMilliseconds}
          style={{ top: `${(ms / lengthMilliseconds) * 100}%` }}
        >
          {text}
        </span>
      ))}
    </div>
  );
}
