/** One of several by name, with a sentence on the one that is chosen. */
import { type ReactNode, useId } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly says?: string;
  /** What the label means, to be asked for. */
  readonly ask?: ReactNode;
  readonly onChange: (value: string) => void;
  /** Options. */
  readonly children: ReactNode;
}

export function Choice({ label, value, says, ask, onChange, children }: Props) {
  const id = useId();
  return (
    <div className="choice">
      <span className="choice-label">
        <label htmlFor={id}>{label}</label>
        {ask}
      </span>
      <select
        id={id}
        value={value}
        aria-describedby={says === undefined ? undefined : `${id}-says`}
        onChange={(event) => onChange(event.target.value)}
      >
        {children}
      </select>
      {says !== undefined && (
        <p id={`${id}-says`} className="says">
          {says}
        </p>
      )}
    </div>
  );
}
