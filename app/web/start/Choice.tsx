/** One of several answers, each a card or a plain word to press. */
import { type ReactNode, useId } from 'react';

interface Option<Value extends string> {
  readonly value: Value;
  readonly title: string;
  readonly drawing?: ReactNode;
  readonly note?: string;
}

interface Props<Value extends string> {
  readonly question: string;
  readonly hint?: ReactNode;
  readonly options: readonly Option<Value>[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  /** What belongs to the answer that is chosen. */
  readonly children?: ReactNode;
}

export function Choice<Value extends string>(props: Props<Value>) {
  const { question, hint, options, value, onChange, children } = props;
  const name = useId();
  return (
    <fieldset className="first-choice">
      <legend>{question}</legend>
      {hint !== undefined && <p className="whisper">{hint}</p>}
      <div className="options" data-drawn={options.some(({ drawing }) => drawing !== undefined)}>
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            {option.drawing}
            <span>
              {option.title}
              {option.note !== undefined && <i>{option.note}</i>}
            </span>
          </label>
        ))}
      </div>
      {children !== undefined && <div className="details">{children}</div>}
    </fieldset>
  );
}
