/** What can be turned on a pattern of the piece's own: names, ranges, defaults and units of its parameters. */
import { useState } from 'react';
import { setPatternParameters } from '../../../engine/edit/offers/pattern.ts';
import type { GradientStops, ParameterDescription } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { ColourField } from '../tag/colour/ColourField.tsx';
import { GradientField } from '../tag/colour/GradientField.tsx';
import { Entry } from '../tag/Entry.tsx';
import { plainMeasure } from '../tag/measures.ts';
import { niceStep } from '../tag/steps.ts';
import { withBounds } from './own-pattern.ts';
import { TextEntry } from './TextEntry.tsx';

interface Props {
  readonly pattern: string;
  readonly parameters: readonly ParameterDescription[];
}

export function PatternSettings({ pattern, parameters }: Props) {
  const session = useSession();
  const set = (index: number, description: ParameterDescription) => {
    const piece = session.bench.get().open?.piece;
    if (piece === undefined) return;
    const changed = parameters.map((one, at) => (at === index ? description : one));
    session.edit(setPatternParameters(piece, pattern, changed), 'drag');
  };
  if (parameters.length === 0) return null;
  return (
    <details className="settings">
      <summary>What can be turned on it</summary>
      <ul>
        {parameters.map((parameter, index) => (
          <li key={parameter.name}>
            <code>{parameter.name}</code>
            <ParameterSettings parameter={parameter} onChange={(changed) => set(index, changed)} />
          </li>
        ))}
      </ul>
    </details>
  );
}

interface SettingsProps {
  readonly parameter: ParameterDescription;
  readonly onChange: (parameter: ParameterDescription) => void;
}

function ParameterSettings({ parameter, onChange }: SettingsProps) {
  const session = useSession();
  const { name, label } = parameter;
  return (
    <fieldset className="setting-fields" aria-label={name}>
      <TextEntry
        caption="called"
        value={label}
        most={40}
        onChange={(text) => onChange({ ...parameter, label: text })}
        onRest={() => session.endDrag()}
      />
      <ByKind parameter={parameter} onChange={onChange} />
    </fieldset>
  );
}

/** A pattern can be proved for values within these bounds. */
const bound = 16_383;

function ByKind({ parameter, onChange }: SettingsProps) {
  const session = useSession();
  const rest = () => session.endDrag();
  switch (parameter.kind) {
    case 'number':
    case 'whole': {
      const whole = parameter.kind === 'whole';
      const { min, max, unit } = parameter;
      const field = (
        caption: string,
        value: number,
        range: [number, number],
        change: (to: number) => object,
      ) => (
        <div className="setting">
          <span>{caption}</span>
          <Entry
            label={caption}
            value={value}
            min={range[0]}
            max={range[1]}
            step={whole ? 1 : niceStep(Math.max(max - min, 1))}
            measure={plainMeasure(unit)}
            whole={whole}
            onChange={(to) => onChange(withBounds({ ...parameter, ...change(to) }))}
            onRest={rest}
          />
        </div>
      );
      return (
        <>
          {field('from', min, [-bound, max], (to) => ({ min: to }))}
          {field('to', max, [min, bound], (to) => ({ max: to }))}
          {field('at first', parameter.default, [min, max], (to) => ({ default: to }))}
          <TextEntry
            caption="unit"
            value={unit ?? ''}
            most={12}
            onChange={(text) => onChange(withUnit(parameter, text))}
            onRest={rest}
          />
        </>
      );
    }
    case 'yes-no':
      return (
        <label className="setting">
          <span>at first</span>
          <input
            className="switch"
            type="checkbox"
            checked={parameter.default}
            onChange={(event) => {
              onChange({ ...parameter, default: event.target.checked });
              rest();
            }}
          />
        </label>
      );
    case 'colour':
      return (
        <ColourField
          label="at first"
          value={parameter.default}
          onChange={(colour) => onChange({ ...parameter, default: colour })}
          onRest={rest}
        />
      );
    case 'gradient':
      return (
        <GradientSetting
          stops={parameter.default}
          onChange={(stops) => onChange({ ...parameter, default: [...stops] })}
          onRest={rest}
        />
      );
  }
}

interface GradientSettingProps {
  readonly stops: GradientStops;
  readonly onChange: (stops: GradientStops) => void;
  readonly onRest: () => void;
}

/** The way back leads to what it was when the settings were opened. */
function GradientSetting({ stops, onChange, onRest }: GradientSettingProps) {
  const [before] = useState(stops);
  return (
    <GradientField
      label="at first"
      stops={stops}
      usual={before}
      onChange={onChange}
      onRest={onRest}
      onReset={() => {
        onChange(before);
        onRest();
      }}
    />
  );
}

type Numeric = Extract<ParameterDescription, { kind: 'number' | 'whole' }>;

/** No unit is no field, not an empty one. */
function withUnit({ unit: _, ...parameter }: Numeric, unit: string): Numeric {
  return unit === '' ? parameter : { ...parameter, unit };
}
