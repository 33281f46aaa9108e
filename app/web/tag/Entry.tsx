/** A figure to type exactly: Enter takes it, arrows step, Escape leaves it as it was. */
import { type KeyboardEvent, useId, useState } from 'react';
import type { Measure } from './measures.ts';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly measure: Measure;
  readonly whole?: boolean;
  readonly disabled?: boolean;
  /** Why a figure within the range will not do, or null. */
  readonly check?: (value: number) => string | null;
  readonly onChange: (value: number) => void;
  readonly onRest: () => void;
}

/** With Shift, or by page. */
export const coarse = 10;

const stepsOf: Partial<Record<string, number>> = {
  ArrowUp: 1,
  ArrowDown: -1,
  PageUp: coarse,
  PageDown: -coarse,
};

export function Entry(props: Props) {
  const { label, value, min, max, step, measure, whole, disabled, check, onChange, onRest } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);

  const settle = () => {
    setTyped(null);
    setComplaint(null);
  };
  const take = (wanted: number) => {
    settle();
    if (wanted !== value) onChange(wanted);
  };
  /** What was typed is taken, or stays in sight with what is wrong with it. */
  const read = (): boolean => {
    if (typed === null) return true;
    const wanted = measure.read(typed);
    const wrong = fault(wanted);
    setComplaint(wrong);
    if (wrong !== null) return false;
    take(whole ? Math.round(wanted!) : wanted!);
    onRest();
    return true;
  };
  const fault = (wanted: number | undefined): string | null => {
    if (wanted === undefined) return `Type a figure, like ${measure.text(value)}.`;
    const range = min === max ? `Only ${measure.text(min)}` : `${measure.text(min)} to ${measure.text(max)}`;
    if (wanted < min || wanted > max) return `${range} here; it is still ${measure.text(value)}.`;
    return check?.(wanted) ?? null;
  };
  const stepBy = (steps: number) => {
    const wanted = Math.min(max, Math.max(min, Number((value + steps * step).toFixed(6))));
    const wrong = check?.(wanted) ?? null;
    if (wrong === null) take(wanted);
    else setComplaint(wrong);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const steps = stepsOf[event.key];
    if (event.key === 'Enter') read();
    else if (event.key === 'Escape') settle();
    else if (steps !== undefined) stepBy(event.shiftKey ? Math.sign(steps) * coarse : steps);
    else return;
    event.preventDefault();
  };
  return (
    <span className="entry">
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={complaint !== null}
        aria-describedby={complaint === null ? undefined : `${id}-told`}
        disabled={disabled}
        value={typed ?? measure.text(value)}
        onChange={(event) => setTyped(event.target.value)}
        onFocus={(event) => event.target.select()}
        onKeyDown={onKeyDown}
        onBlur={() => {
          if (read()) onRest();
        }}
      />
      {complaint !== null && (
        <span id={`${id}-told`} className="told" role="alert">
          {complaint}
        </span>
      )}
    </span>
  );
}
