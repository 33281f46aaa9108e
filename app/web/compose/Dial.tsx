/** A slider with its name and its value in words. */
import { type CSSProperties, useId } from 'react';

interface Props {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  /** The value as it is read: with its unit, in percent. */
  readonly text: string;
  readonly onChange: (value: number) => void;
  /** The hand lets go: what comes next is another edit. */
  readonly onRest?: () => void;
}

export function Dial({ label, min, max, step, value, text, onChange, onRest }: Props) {
  const id = useId();
  const share = max > min ? (value - min) / (max - min) : 0;
  return (
    <div className="row">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        style={{ '--share': `${share * 100}%` } as CSSProperties}
        onChange={(event) => onChange(Number(event.target.value))}
        onPointerUp={onRest}
        onBlur={onRest}
      />
      <output htmlFor={id}>{text}</output>
    </div>
  );
}
