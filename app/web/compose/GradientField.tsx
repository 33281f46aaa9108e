/** A gradient: its ribbon with a pin for each stop, and the colour of the stop in hand. */
import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from 'react';
import type { GradientStops } from '../../../engine/piece/schema.ts';
import { ColourField } from './ColourField.tsx';
import { addStop, colourStop, gradientCss, mostStops, moveStop, removeStop } from './gradient.ts';

interface Props {
  readonly label: string;
  readonly stops: GradientStops;
  readonly onChange: (stops: GradientStops) => void;
  readonly onRest: () => void;
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

export function GradientField({ label, stops, onChange, onRest }: Props) {
  const id = useId();
  const ribbon = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState(0);
  const index = Math.min(chosen, stops.length - 1);
  const stop = stops[index]!;

  const drag = (event: PointerEvent, at: number) => {
    const box = ribbon.current?.getBoundingClientRect();
    if (box === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    onChange(moveStop(stops, at, (event.clientX - box.left) / box.width));
  };
  const onKey = (event: KeyboardEvent, at: number) => {
    const step = keySteps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    onChange(moveStop(stops, at, stops[at]!.at + step));
  };

  return (
    <fieldset className="gradient" aria-labelledby={id}>
      <div className="row">
        <span id={id}>{label}</span>
        <span className="stop-buttons">
          <button
            type="button"
            className="quiet small"
            aria-label={`${label}: add a stop`}
            disabled={stops.length >= mostStops}
            onClick={() => {
              const added = addStop(stops);
              onChange(added.stops);
              setChosen(added.index);
              onRest();
            }}
          >
            +
          </button>
          <button
            type="button"
            className="quiet small"
            aria-label={`${label}: remove stop ${index + 1}`}
            disabled={stops.length <= 1}
            onClick={() => {
              onChange(removeStop(stops, index));
              onRest();
            }}
          >
            −
          </button>
        </span>
      </div>
      <div className="ribbon" ref={ribbon} style={{ background: gradientCss(stops) }}>
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
            data-chosen={i === index}
            style={{ left: `${at * 100}%`, background: colour }}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              setChosen(i);
            }}
            onPointerMove={(event) => drag(event, i)}
            onPointerUp={onRest}
            onFocus={() => setChosen(i)}
            onKeyDown={(event) => onKey(event, i)}
            onBlur={onRest}
          />
        ))}
      </div>
      <ColourField
        key={index}
        label={`Stop ${index + 1}`}
        value={stop.colour}
        onChange={(colour) => onChange(colourStop(stops, index, colour))}
        onRest={onRest}
      />
    </fieldset>
  );
}
