/** A number with its unit. What is typed counts once it is complete: at Enter, or when the hand goes elsewhere. */
import { useEffect, useId, useRef } from 'react';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
  readonly onNumber: (value: number) => void;
}

export function NumberField({ label, value, min, max, step, unit, onNumber }: Props) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const shown = String(Number(value.toFixed(3)));
  // Whatever the piece says in the end, be it that the edit was refused.
  useEffect(() => {
    if (field.current !== null && document.activeElement !== field.current) field.current.value = shown;
  });
  const take = () => {
    const input = field.current!;
    const typed = input.valueAsNumber;
    if (Number.isNaN(typed)) input.value = shown;
    else if (typed !== Number(shown)) onNumber(Math.min(max, Math.max(min, typed)));
  };
  return (
    <div className="number-field">
      <label htmlFor={id}>{label}</label>
      <span>
        <input
          ref={field}
          id={id}
          type="number"
          inputMode="decimal"
          min={min}
          max={max}
          step={step}
          defaultValue={shown}
          onBlur={() => {
            take();
            field.current!.value = shown;
          }}
          onPointerUp={take}
          onKeyUp={(event) => {
            if (['Enter', 'ArrowUp', 'ArrowDown'].includes(event.key)) take();
          }}
        />
        <span aria-hidden="true">{unit}</span>
      </span>
    </div>
  );
}
