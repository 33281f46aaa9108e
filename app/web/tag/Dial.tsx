/** A slider with its name, its figure to type, and the way back to the default. */
import { type CSSProperties, type KeyboardEvent, type ReactNode, useId } from 'react';
import { coarse, Entry } from './Entry.tsx';
import type { Measure } from './measures.ts';

interface Props {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly measure: Measure;
  readonly whole?: boolean;
  readonly disabled?: boolean;
  /** What it is where nobody has turned it. */
  readonly usual?: number | undefined;
  /** A picture of what each place on the track would give, as a CSS background. */
  readonly track?: string;
  /** Beyond it the track gives nothing more. */
  readonly limit?: number;
  readonly onChange: (value: number) => void;
  /** The hand lets go: what comes next is another edit. */
  readonly onRest: () => void;
  readonly onReset?: () => void;
  /** Stands at the end of the head. */
  readonly aside?: ReactNode;
}

const arrows: Partial<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

export function Dial(props: Props) {
  const { label, min, max, step, value, measure, usual, track, limit, onChange, onRest, onReset, aside } =
    props;
  const id = useId();
  const shareOf = (at: number) => (max > min ? Math.min(1, Math.max(0, (at - min) / (max - min))) : 0);
  const isTurned = usual !== undefined && value !== usual && onReset !== undefined;
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = arrows[event.key];
    if (direction === undefined || !event.shiftKey) return;
    event.preventDefault();
    const wanted = Number((value + direction * coarse * step).toFixed(6));
    onChange(Math.min(max, Math.max(min, wanted)));
  };
  const style = {
    '--share': `${shareOf(value) * 100}%`,
    ...(track && { '--track': track }),
  } as CSSProperties;
  return (
    <div className="dial" data-turned={isTurned}>
      <div className="dial-head">
        <label htmlFor={id}>{label}</label>
        {isTurned && <BackButton label={label} usual={measure.text(usual)} onReset={onReset} />}
        <Entry
          label={`${label}, exactly`}
          value={value}
          min={min}
          max={max}
          step={step}
          measure={measure}
          whole={props.whole ?? false}
          disabled={props.disabled ?? false}
          onChange={onChange}
          onRest={onRest}
        />
        {aside}
      </div>
      <div className="dial-track">
        {usual !== undefined && (
          <span className="usual" style={{ '--at': shareOf(usual) } as CSSProperties} aria-hidden="true" />
        )}
        {limit !== undefined && (
          <span className="beyond" style={{ '--at': shareOf(limit) } as CSSProperties} aria-hidden="true" />
        )}
        <input
          id={id}
          type="range"
          className={track === undefined ? undefined : 'painted'}
          min={min}
          max={max}
          step={step}
          value={value}
          disabled={props.disabled}
          aria-valuetext={measure.text(value)}
          style={style}
          onChange={(event) => onChange(Number(event.target.value))}
          onKeyDown={onKeyDown}
          onPointerUp={onRest}
          onDoubleClick={onReset}
          onBlur={onRest}
        />
      </div>
    </div>
  );
}

interface BackProps {
  readonly label: string;
  readonly usual: string;
  readonly onReset: () => void;
}

/** Stands there only where something has been turned, and so marks it. */
export function BackButton({ label, usual, onReset }: BackProps) {
  const words = `${label}: back to ${usual}`;
  return (
    <button type="button" className="back-to-usual" aria-label={words} title={words} onClick={onReset}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d="M3 5.500h6.500a3.500 3.500 0 0 1 0 7H6M5.800 2.500 2.800 5.500l3 3" />
      </svg>
    </button>
  );
}
