/** A number that is typed. What is half typed stays in the field until it is a number that may be. */
import { useState } from 'react';

interface Props {
  readonly id?: string;
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly unit?: string;
  readonly onChange: (value: number) => void;
  /** The hand leaves the field: what was typed is one step. */
  readonly onRest: () => void;
}

export function NumberEntry({ id, label, value, min, max, step = 1, unit, onChange, onRest }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <label className="number-entry">
      <span>{label}</span>
      <input
        id={id}
        type="number"
        min={min}
        max={max}
        step={step}
        value={typed ?? rounded(value, step)}
        onChange={(event) => {
          setTyped(event.target.value);
          const number = event.target.valueAsNumber;
          if (number >= min && number <= max) onChange(number);
        }}
        onBlur={() => {
          setTyped(null);
          onRest();
        }}
      />
      {unit !== undefined && <span className="unit">{unit}</span>}
    </label>
  );
}

/** Without digits that nobody typed. */
function rounded(value: number, step: number): number {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return Number(value.toFixed(digits));
}
