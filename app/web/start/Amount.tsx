/** A number with its unit. It may be empty or wrong while it is written; then the one before holds. */
import { useId, useState } from 'react';

interface Props {
  readonly label: string;
  readonly unit?: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number | 'any';
  readonly onChange: (value: number) => void;
}

export function Amount({ label, unit, value, min, max, step, onChange }: Props) {
  const id = useId();
  const [written, setWritten] = useState<string | null>(null);
  return (
    <span className="measure">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="number"
        inputMode={step === 1 ? 'numeric' : 'decimal'}
        required
        min={min}
        max={max}
        step={step}
        value={written ?? String(value)}
        onChange={({ target }) => {
          setWritten(target.value);
          if (target.validity.valid) onChange(target.valueAsNumber);
        }}
        // Once it is left, what holds is shown, unless it is still to be mended.
        onBlur={({ target }) => {
          if (target.validity.valid) setWritten(null);
        }}
      />
      {unit !== undefined && <span aria-hidden="true">{unit}</span>}
    </span>
  );
}
