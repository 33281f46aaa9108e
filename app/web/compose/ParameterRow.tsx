/** One parameter of a clip, with the control that suits its kind. */
import { useId } from 'react';
import type { GradientStops, ParameterDescription, ParameterValue } from '../../../engine/piece/schema.ts';
import { duration } from '../session/words.ts';
import { ColourField } from './ColourField.tsx';
import { Dial } from './Dial.tsx';
import { GradientField } from './GradientField.tsx';
import { niceStep, tidy } from './steps.ts';

interface Props {
  readonly parameter: ParameterDescription;
  readonly value: ParameterValue;
  readonly onChange: (value: ParameterValue) => void;
  readonly onRest: () => void;
}

export function ParameterRow(props: Props) {
  const { value } = props;
  if (isKeyed(value)) return <KeyedRows {...props} value={value} />;
  return <PlainRow {...props} />;
}

interface Keyed {
  readonly keys: readonly { readonly atMilliseconds: number; readonly value: number | string }[];
}

function isKeyed(value: ParameterValue): value is ParameterValue & Keyed {
  return typeof value === 'object' && !Array.isArray(value);
}

/** A parameter that changes over the clip's time: one control a key. */
function KeyedRows({ parameter, value, onChange, onRest }: Props & { value: Keyed }) {
  return (
    <fieldset className="keyed">
      <legend>{parameter.label}, over time</legend>
      {value.keys.map((key, index) => (
        <PlainRow
          key={key.atMilliseconds}
          parameter={{ ...parameter, label: `at ${duration(key.atMilliseconds)}` }}
          value={key.value}
          onChange={(changed) => {
            const keys = value.keys.map((other, at) => (at === index ? { ...other, value: changed } : other));
            // Its easings and times are those of the value it came from.
            onChange({ keys } as ParameterValue);
          }}
          onRest={onRest}
        />
      ))}
    </fieldset>
  );
}

function PlainRow({ parameter, value, onChange, onRest }: Props) {
  const id = useId();
  switch (parameter.kind) {
    case 'number':
    case 'whole': {
      const step = parameter.kind === 'whole' ? 1 : niceStep(parameter.max - parameter.min);
      const unit = parameter.unit === undefined ? '' : ` ${parameter.unit}`;
      const number = Number(value);
      return (
        <Dial
          label={parameter.label}
          min={parameter.min}
          max={parameter.max}
          step={step}
          value={number}
          text={`${tidy(number, step)}${unit}`}
          onChange={onChange}
          onRest={onRest}
        />
      );
    }
    case 'yes-no':
      return (
        <div className="row">
          <label htmlFor={id}>{parameter.label}</label>
          <input
            id={id}
            className="switch"
            type="checkbox"
            checked={value === true}
            onChange={(event) => onChange(event.target.checked)}
          />
        </div>
      );
    case 'colour':
      return (
        <ColourField label={parameter.label} value={String(value)} onChange={onChange} onRest={onRest} />
      );
    case 'gradient':
      return (
        <GradientField
          label={parameter.label}
          stops={value as GradientStops}
          onChange={onChange}
          onRest={onRest}
        />
      );
  }
}
