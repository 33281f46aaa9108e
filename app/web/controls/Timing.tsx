/** Times of the gestures, folded away: what they are is right for nearly every hand. */
import type { Edit } from '../../../engine/edit/edit.ts';
import { controls } from '../../../engine/piece/schema/controls.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { NumberField } from './NumberField.tsx';

const times = [
  { field: 'holdMilliseconds', label: 'A hold takes' },
  { field: 'doubleMilliseconds', label: 'Second press within' },
  { field: 'caughtMilliseconds', label: 'Caught in a bag after' },
  { field: 'debounceMilliseconds', label: 'Contact at rest after' },
] as const;

interface Props {
  readonly piece: Piece;
  readonly attempt: (edit: Edit) => boolean;
}

export function Timing({ piece, attempt }: Props) {
  return (
    <details className="timing">
      <summary>Timing</summary>
      {times.map(({ field, label }) => {
        const { minValue, maxValue } = controls.shape[field].unwrap();
        return (
          <NumberField
            key={field}
            label={label}
            unit="ms"
            value={piece.controls[field]}
            min={minValue ?? 0}
            max={maxValue ?? Number.MAX_SAFE_INTEGER}
            step={10}
            onNumber={(value) => attempt({ kind: 'set-controls', set: { [field]: Math.round(value) } })}
          />
        );
      })}
    </details>
  );
}
