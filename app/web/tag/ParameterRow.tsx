/** One parameter of the clip, with the control that suits its kind. */
import { type ComponentType, memo } from 'react';
import { isKeyed } from '../../../engine/pattern/keyed.ts';
import type { GradientStops, ParameterDescription, ParameterValue } from '../../../engine/piece/schema.ts';
import { useClipInHand, useClipPart } from './clip-in-hand.ts';
import { ColourField } from './colour/ColourField.tsx';
import { GradientField } from './colour/GradientField.tsx';
import { KeyedRow } from './course/KeyedRow.tsx';
import { KnotButton } from './course/KnotButton.tsx';
import { Dial } from './Dial.tsx';
import { plainMeasure } from './measures.ts';
import { RowFault } from './RowFault.tsx';
import { niceStep } from './steps.ts';

type Kind = ParameterDescription['kind'];
type Described<K extends Kind> = Extract<ParameterDescription, { kind: K }>;

interface RowProps<K extends Kind> {
  readonly parameter: K extends Kind ? Described<K> : never;
  readonly value: ParameterValue;
}

/** The piece may say nothing of a parameter; then its pattern's default holds. */
export const ParameterRow = memo(function ParameterRow({ parameter }: { parameter: ParameterDescription }) {
  const value = useClipPart((clip) => clip.parameters[parameter.name]) ?? parameter.default;
  const Row = rows[parameter.kind] as ComponentType<{
    parameter: ParameterDescription;
    value: ParameterValue;
  }>;
  return (
    <div className="parameter">
      {isKeyed(value) && parameter.kind !== 'gradient' && parameter.kind !== 'yes-no' ? (
        <KeyedRow parameter={parameter} value={value} />
      ) : (
        <Row parameter={parameter} value={value} />
      )}
      <RowFault row={rowOf(parameter)} />
    </div>
  );
});

export function rowOf({ name }: Pick<ParameterDescription, 'name'>): string {
  return `parameter ${name}`;
}

/** What the hand does to a parameter that stands still. */
function useTurns(parameter: ParameterDescription) {
  const hand = useClipInHand();
  const row = rowOf(parameter);
  const set = (value: ParameterValue | null, manner: 'step' | 'drag') =>
    hand.edit(row, (at) => ({ kind: 'set-parameter', at, parameter: parameter.name, value }), manner);
  return {
    turn: (value: ParameterValue) => set(value, 'drag'),
    rest: () => hand.rest(),
    reset: () => set(null, 'step'),
  };
}

function NumberRow({ parameter, value }: RowProps<'number' | 'whole'>) {
  const { turn, rest, reset } = useTurns(parameter);
  const { kind, label, min, max, unit } = parameter;
  return (
    <Dial
      label={label}
      min={min}
      max={max}
      step={kind === 'whole' ? 1 : niceStep(max - min)}
      value={Number(value)}
      measure={plainMeasure(unit)}
      whole={kind === 'whole'}
      usual={parameter.default}
      onChange={turn}
      onRest={rest}
      onReset={reset}
      aside={<KnotButton parameter={parameter} value={Number(value)} />}
    />
  );
}

function YesNoRow({ parameter, value }: RowProps<'yes-no'>) {
  const { turn, rest } = useTurns(parameter);
  return (
    <label className="figure-row">
      <span>{parameter.label}</span>
      <input
        className="switch"
        type="checkbox"
        checked={value === true}
        onChange={(event) => {
          turn(event.target.checked);
          rest();
        }}
      />
    </label>
  );
}

function ColourRow({ parameter, value }: RowProps<'colour'>) {
  const { turn, rest, reset } = useTurns(parameter);
  return (
    <ColourField
      label={parameter.label}
      value={String(value)}
      usual={parameter.default}
      onChange={turn}
      onRest={rest}
      onReset={reset}
      aside={<KnotButton parameter={parameter} value={String(value)} />}
    />
  );
}

function GradientRow({ parameter, value }: RowProps<'gradient'>) {
  const { turn, rest, reset } = useTurns(parameter);
  return (
    <GradientField
      label={parameter.label}
      stops={value as GradientStops}
      usual={parameter.default}
      onChange={turn}
      onRest={rest}
      onReset={reset}
    />
  );
}

const rows = {
  number: NumberRow,
  whole: NumberRow,
  'yes-no': YesNoRow,
  colour: ColourRow,
  gradient: GradientRow,
} as const satisfies Record<Kind, ComponentType<never>>;
