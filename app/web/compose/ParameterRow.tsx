/** One parameter of a clip, with the control that suits its kind. */
import { useId } from 'react';
import type { GradientStops, ParameterDescription, ParameterValue } from '../../../engine/piece/schema.ts';
import { duration } from '../session/words.ts';
import { ColourField } from './ColourField.tsx';
import { Dial } from './Dial.tsx';
import { GradientField } from './GradientField.tsx';

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

/** About 400 steps over the range, at a round figure: finer than a hand, coarse enough to read. */
export function niceStep(range: number): number {
  const rough = range / 400;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough * 0.999) ?? 10;
  return step * power;
}

/** As many digits as the step has. */
export function tidy(value: number, step: number): string {
  const digits = Math.min(4, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return String(Number(value.toFixed(digits)));
}
