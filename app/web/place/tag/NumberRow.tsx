/** A number with its name and unit. It takes effect while it is typed; leaving it ends the step. */
import { useId, useState } from 'react';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit?: string;
  readonly onChange: (value: number) => void;
  readonly onRest: () => void;
}

/** As files and rulers have it: no more than hundredths. */
function written(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

export function NumberRow({ label, value, min, max, step, unit = '', onChange, onRest }: Props) {
  const id = useId();
  // What is being typed need not be a number yet.
  const [draft, setDraft] = useState<string | null>(null);
  const rest = () => {
    setDraft(null);
    onRest();
  };
  return (
    <div className="number-row">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="number"
        inputMode="decimal"
        min={min}
        max={max}
        step={step}
        value={draft ?? written(value)}
        onChange={(event) => {
          const text = event.target.value;
          setDraft(text);
          const wanted = Number(text);
          if (text.trim() !== '' && wanted >= min && wanted <= max) onChange(wanted);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') rest();
        }}
        onBlur={rest}
      />
      <span className="unit">{unit}</span>
    </div>
  );
}
