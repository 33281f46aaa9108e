/** A gradient: its ribbon as the engine mixes it, with a pin for each stop, and the stop in hand. */
import {
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  useEffect,
  useId,
  useRef,
  useState,
} from 'react';
import { same } from '../../../../engine/edit/same.ts';
import type { GradientStops } from '../../../../engine/piece/schema.ts';
import { BackButton } from '../Dial.tsx';
import { Entry } from '../Entry.tsx';
import { share } from '../measures.ts';
import { ColourField } from './ColourField.tsx';
import {
  addStop,
  addStopAt,
  colourStop,
  gradientLevels,
  hardEdge,
  mostStops,
  moveStop,
  removeStop,
} from './gradient.ts';

interface Props {
  readonly label: string;
  readonly stops: GradientStops;
  readonly usual: GradientStops;
  readonly onChange: (stops: GradientStops) => void;
  readonly onRest: () => void;
  readonly onReset: () => void;
}

const keySteps: Partial<Record<string, number>> = {
  ArrowLeft: -0.01,
  ArrowDown: -0.01,
  ArrowRight: 0.01,
  ArrowUp: 0.01,
  PageDown: -0.1,
  PageUp: 0.1,
  Home: -1,
  End: 1,
};

export function GradientField({ label, stops, usual, onChange, onRest, onReset }: Props) {
  const id = useId();
  const ribbon = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState(0);
  const [open, setOpen] = useState(false);
  const pulled = useRef(false);
  const index = Math.min(chosen, stops.length - 1);
  const stop = stops[index]!;
  const edge = hardEdge(stops, index);

  const placeOf = (event: { clientX: number }) => {
    const box = ribbon.current!.getBoundingClientRect();
    return (event.clientX - box.left) / box.width;
  };
  const drag = (event: PointerEvent, at: number) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    pulled.current = true;
    onChange(moveStop(stops, at, placeOf(event)));
  };
  const step = (change: { stops: GradientStops; index?: number }) => {
    onChange(change.stops);
    if (change.index !== undefined) setChosen(change.index);
    onRest();
  };
  const onKey = (event: KeyboardEvent, at: number) => {
    if (event.key === 'Delete' || event.key === 'Backspace') step({ stops: removeStop(stops, at) });
    const by = keySteps[event.key];
    if (by === undefined) return;
    event.preventDefault();
    onChange(moveStop(stops, at, stops[at]!.at + by * (event.shiftKey ? 10 : 1)));
  };
  const onDoubleClick = (event: MouseEvent) => {
    if (stops.length < mostStops) step(addStopAt(stops, placeOf(event)));
  };
  return (
    <fieldset className="gradient" aria-labelledby={id}>
      <div className="dial-head">
        <span id={id}>{label}</span>
        {!same(stops, usual) && <BackButton label={label} usual="the pattern's own" onReset={onReset} />}
        <button
          type="button"
          className="quiet small"
          aria-expanded={open}
          aria-label={`${label}: ${open ? 'close' : 'open'} its stops`}
          onClick={() => setOpen(!open)}
        >
          {open ? 'Close' : 'Stops'}
        </button>
      </div>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a shorter way to what a button does, too */}
      <div className="ribbon" ref={ribbon} onDoubleClick={onDoubleClick}>
        <Ribbon stops={stops} />
        {stops.map(({ at, colour }, i) => (
          <div
            // biome-ignore lint/suspicious/noArrayIndexKey: a stop has no other identity than its rank
            key={i}
            className="pin"
            role="slider"
            tabIndex={0}
            aria-label={`${label}, stop ${i + 1} of ${stops.length}`}
            aria-valuemin={0}
            aria-valuemax={100}
            aria-valuenow={Math.round(at * 100)}
            aria-valuetext={`${Math.round(at * 100)} %, ${colour}`}
            data-chosen={open && i === index}
            style={{ left: `${at * 100}%`, background: colour }}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              pulled.current = false;
              setChosen(i);
            }}
            // Who taps a pin wants its colour.
            onClick={() => setOpen((now) => now || !pulled.current)}
            onPointerMove={(event) => drag(event, i)}
            onPointerUp={onRest}
            onDoubleClick={(event) => event.stopPropagation()}
            onFocus={() => setChosen(i)}
            onKeyDown={(event) => onKey(event, i)}
            onBlur={onRest}
          />
        ))}
      </div>
      {open && (
        <div className="stops">
          <div className="stop-buttons">
            <button
              type="button"
              className="quiet small"
              aria-label={`${label}: add a stop`}
              disabled={stops.length >= mostStops}
              onClick={() => step(addStop(stops))}
            >
              Add
            </button>
            <button
              type="button"
              className="quiet small"
              aria-label={`${label}: remove stop ${index + 1}`}
              disabled={stops.length <= 1}
              onClick={() => step({ stops: removeStop(stops, index) })}
            >
              Remove
            </button>
            <button
              type="button"
              className="quiet small"
              title="The next stop comes to this one"
              disabled={edge === undefined}
              onClick={() => edge !== undefined && step({ stops: edge })}
            >
              Hard edge
            </button>
          </div>
          <div className="figure-row">
            <span>
              Stop {index + 1} of {stops.length}, at
            </span>
            <Entry
              key={index}
              label={`Stop ${index + 1}, at`}
              value={stop.at}
              min={stops[index - 1]?.at ?? 0}
              max={stops[index + 1]?.at ?? 1}
              step={0.01}
              measure={share}
              onChange={(at) => onChange(moveStop(stops, index, at))}
              onRest={onRest}
            />
          </div>
          <ColourField
            key={`colour ${index}`}
            label={`Stop ${index + 1}`}
            value={stop.colour}
            onChange={(colour) => onChange(colourStop(stops, index, colour))}
            onRest={onRest}
          />
        </div>
      )}
    </fieldset>
  );
}

/** Finer than any ribbon is wide. */
const places = 512;

function Ribbon({ stops }: { stops: GradientStops }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const levels = gradientLevels(stops, places);
    const image = new ImageData(places, 1);
    for (let place = 0; place < places; place++) {
      image.data.set(levels.subarray(place * 3, place * 3 + 3), place * 4);
      image.data[place * 4 + 3] = 255;
    }
    canvas.current!.getContext('2d')!.putImageData(image, 0, 0);
  }, [stops]);
  return <canvas ref={canvas} width={places} height={1} />;
}
