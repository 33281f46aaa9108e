/** One button: its name and pin, and what press, hold and double press do. */
import { useId } from 'react';
import type { Edit } from '../../../engine/edit/edit.ts';
import type { Button, Piece } from '../../../engine/piece/schema.ts';
import { actionChoices, keyOfAction } from './actions.ts';
import { consequenceWords } from './consequence.ts';
import { NumberField } from './NumberField.tsx';
import { pinCaution, pinChoices } from './pins.ts';

interface Props {
  readonly piece: Piece;
  readonly button: Button;
  readonly attempt: (edit: Edit) => boolean;
}

const gestures = [
  { gesture: 'press', words: 'Press' },
  { gesture: 'hold', words: 'Hold' },
  { gesture: 'double', words: 'Press twice' },
] as const;
const nothing = '';

export function ButtonFields({ piece, button, attempt }: Props) {
  const id = useId();
  const { name } = button;
  const choices = actionChoices(piece.looks);
  const caution = pinCaution(piece, button.pin);
  const rename = (field: HTMLInputElement) => {
    const wanted = field.value.trim();
    const taken =
      wanted === '' || wanted === name || !attempt({ kind: 'rename-button', button: name, name: wanted });
    if (taken) field.value = name;
  };
  return (
    <fieldset className="button-fields">
      <legend className="unseen">Button {name}</legend>
      <div className="button-names">
        <input
          type="text"
          aria-label={`Name of button ${name}`}
          defaultValue={name}
          maxLength={40}
          onBlur={(event) => rename(event.currentTarget)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') rename(event.currentTarget);
          }}
        />
        <Pin piece={piece} button={button} attempt={attempt} />
        <button
          type="button"
          className="quiet"
          aria-label={`Remove button ${name}`}
          onClick={() => attempt({ kind: 'remove-button', button: name })}
        >
          Remove
        </button>
      </div>
      {caution !== null && <p className="whisper">{caution}</p>}
      {gestures.map(({ gesture, words }) => {
        const action = button[gesture];
        return (
          <div className="number-field" key={gesture}>
            <label htmlFor={`${id}-${gesture}`}>{words}</label>
            <select
              id={`${id}-${gesture}`}
              value={action === undefined ? nothing : keyOfAction(action)}
              onChange={({ target }) => {
                const chosen = choices.find(({ key }) => key === target.value)?.action ?? null;
                attempt({ kind: 'set-button', button: name, set: { [gesture]: chosen } });
              }}
            >
              <option value={nothing}>does nothing</option>
              {choices.map((choice) => (
                <option key={choice.key} value={choice.key}>
                  {choice.words}
                </option>
              ))}
            </select>
          </div>
        );
      })}
      <p className="whisper consequence">{consequenceWords(button, piece.controls)}</p>
    </fieldset>
  );
}

function Pin({ piece, button, attempt }: Props) {
  const id = useId();
  const choices = pinChoices(piece, button.name);
  const set = (pin: number) => attempt({ kind: 'set-button', button: button.name, set: { pin } });
  if (choices === null) {
    return <NumberField label="pin" unit="" value={button.pin} min={0} max={64} step={1} onNumber={set} />;
  }
  return (
    <span className="pin-choice">
      <label htmlFor={id}>pin</label>
      <select id={id} value={button.pin} onChange={(event) => set(Number(event.target.value))}>
        {choices.map(({ number, words, taken }) => (
          <option key={number} value={number} disabled={taken}>
            {words}
          </option>
        ))}
      </select>
    </span>
  );
}
