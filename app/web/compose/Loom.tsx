/**
 * The look that plays, on the loom: its cloth with its current beside it, and the cloth of every clip on
 * its track, all on one time axis that runs down.
 */
import { type CSSProperties, type KeyboardEvent, useCallback, useMemo, useRef, useState } from 'react';
import type { Look, Piece } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import { LiveWeft } from '../cloth/LiveWeft.tsx';
import { useSize } from '../cloth/use-size.ts';
import { pasteClip } from '../loom/clip-hands.ts';
import { addTrack } from '../loom/edit-tracks.ts';
import { LookEnd } from '../loom/LookEnd.tsx';
import { LoomBar } from '../loom/LoomBar.tsx';
import { SnapLine } from '../loom/SnapLine.tsx';
import { TrackHead, trackTitle } from '../loom/TrackHead.tsx';
import { useClipPull } from '../loom/use-clip-pull.ts';
import { useColumnPointing, useColumns, useScattered } from '../loom/use-columns.ts';
import { useLoomTarget } from '../loom/use-loom-target.ts';
import { useTrackDrag } from '../loom/use-track-drag.ts';
import { useWheelZoom } from '../loom/use-wheel-zoom.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
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
/** More rows than this are no clearer, and take long to weave. */
const mostRows = 1200;
const nowhere = new Uint16Array(0);

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
  const session = useSession();
  const sheet = useRef<HTMLDivElement>(null);
  const bed = useRef<HTMLDivElement>(null);
  const curve = useRef<CurveHandle>(null);
  const [zoom, setZoom] = useState(1);
  const [stretch, setStretch] = useState(1);
  const { height } = useSize(bed);
  const rows = Math.min(mostRows, Math.round(height / threadHeight));
  const wired = useMemo(() => Uint16Array.from(view.hidden, (_, pixel) => pixel), [view.hidden]);
  const everyPixel = useColumns(wired, view.places);
  const { pointing } = useColumnPointing(everyPixel);
  const scrub = useScrub(bed, look.lengthMilliseconds, 'taps');
  const onCurrents = useCallback((currents: Float32Array, known: number) => {
    curve.current?.show(currents, known);
  }, []);
  const onPull = useClipPull(bed);
  useLoomTarget(bed, look);
  useWheelZoom(sheet, bed, zoom, setZoom);
  const scattered = useScattered(view, at);
  const drawTrack = useTrackDrag(bed, look);
  const style = { '--tracks': look.tracks.length, '--zoom': zoom * stretch } as CSSProperties;
  const isEmpty = look.tracks.every(({ clips }) => clips.length === 0);

  return (
    <section
      className="loom"
      data-zoomed={zoom > 1}
      aria-label={`Loom: ${look.name}`}
      style={style}
      onKeyDown={(event: KeyboardEvent) => {
        if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'v') return;
        event.preventDefault();
        pasteClip(session);
      }}
    >
      <LoomBar zoom={zoom} onZoom={setZoom} scattered={scattered} />
      <div className="loom-sheet" ref={sheet}>
        <div className="loom-head">
          <span />
          <div>
            <b>{look.name}</b>
            <LiveWeft columns={everyPixel} />
          </div>
          <span>
            current
            <br />
            <i>limit {milliamps(view.limitMilliamps)}</i>
          </span>
          {look.tracks.map((_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a track has no other identity than its rank
            <TrackHead key={index} look={look} track={index} draw={drawTrack(index)} />
          ))}
          <button
            type="button"
            className="quiet small add-track"
            aria-label="Add a track on top"
            title="Add a track on top"
            onClick={() => addTrack(session, look)}
          >
            +
          </button>
        </div>
        <div className="loom-bed" ref={bed}>
          <TimeAxis lengthMilliseconds={look.lengthMilliseconds} height={height} />
          <div
            className="warp whole"
            {...scrub}
            onPointerMove={(event) => {
              scrub.onPointerMove(event);
              pointing.onPointerMove(event);
            }}
            onPointerLeave={pointing.onPointerLeave}
          >
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
          {look.tracks.map(({ clips }, track) => (
            <div
              className="warp"
              // biome-ignore lint/suspicious/noArrayIndexKey: a track has no other identity than its rank
              key={track}
              data-takes-swatch="track"
              data-look={at}
              data-track={track}
              data-empty={clips.length === 0}
            >
              {rows > 0 &&
                clips.map((clip, index) => (
                  <ClipOnTrack
                    // biome-ignore lint/suspicious/noArrayIndexKey: nor has a clip
                    key={index}
                    clip={clip}
                    look={at}
                    track={track}
                    index={index}
                    trackName={trackTitle(look, track)}
                    lookMilliseconds={look.lengthMilliseconds}
                    wired={columnsOf(view, at, track, index)}
                    places={view.places}
                    isOwn={piece.patterns.some(({ name }) => name === clip.pattern)}
                    rows={rows}
                    onPull={onPull}
                  />
                ))}
            </div>
          ))}
          {isEmpty && <EmptyLook />}
          <SnapLine lengthMilliseconds={look.lengthMilliseconds} />
          <Shuttle
            lengthMilliseconds={look.lengthMilliseconds}
            tickMilliseconds={piece.tickMilliseconds}
            bed={bed}
          />
        </div>
        <LookEnd look={look} bed={bed} onStretch={setStretch} />
      </div>
    </section>
  );
}

/** A clip that the stage has not taken yet has no columns for a moment. */
function columnsOf(view: PieceView, look: number, track: number, clip: number): Uint16Array {
  const shown = view.clips.find((one) => one.look === look && one.track === track && one.clip === clip);
  return shown?.columns ?? nowhere;
}

function EmptyLook() {
  const session = useSession();
  const bookOpen = useStore(session.desk.bookOpen);
  return (
    <div className="empty-look">
      <p>Nothing shines in this look yet.</p>
      {bookOpen ? (
        <p className="whisper">Tap a swatch below, or carry one here.</p>
      ) : (
        <button type="button" onClick={() => session.desk.bookOpen.set(true)}>
          Choose a swatch
        </button>
      )}
    </div>
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
