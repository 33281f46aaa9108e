/** How bright the piece begins, and the steps that a button goes through. */
import type { Edit } from '../../../engine/edit/edit.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { NumberField } from './NumberField.tsx';
import { addedStep, byteOf, percentOf, withStep } from './steps.ts';

/** As many as the file allows. */
const mostSteps = 16;

interface Props {
  readonly piece: Piece;
  readonly attempt: (edit: Edit) => boolean;
}

export function Brightnesses({ piece, attempt }: Props) {
  const { brightnessSteps: steps } = piece.controls;
  const set = (brightnessSteps: number[]) => attempt({ kind: 'set-controls', set: { brightnessSteps } });
  return (
    <fieldset className="brightnesses">
      <legend>Brightness</legend>
      <NumberField
        label="Begins at"
        unit="%"
        value={percentOf(piece.output.startBrightness)}
        min={0}
        max={100}
        step={1}
        onNumber={(percent) => attempt({ kind: 'set-output', set: { startBrightness: byteOf(percent) } })}
      />
      <p className="whisper">“One step brighter” goes through these, and from the last to the first:</p>
      <ol className="steps">
        {steps.map((step, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has no other identity than its rank
          <li key={index}>
            <NumberField
              label={`Step ${index + 1}`}
              unit="%"
              value={percentOf(step)}
              min={0.4}
              max={100}
              step={1}
              onNumber={(percent) => set(withStep(steps, index, byteOf(percent)))}
            />
            <button
              type="button"
              className="quiet small"
              aria-label={`Remove step ${index + 1}`}
              disabled={steps.length === 1}
              onClick={() => set(steps.filter((_, at) => at !== index))}
            >
              ×
            </button>
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="quiet small"
        disabled={steps.length >= mostSteps || addedStep(steps) === undefined}
        onClick={() => set(addedStep(steps)!)}
      >
        Add a step
      </button>
    </fieldset>
  );
}
