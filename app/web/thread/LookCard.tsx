/** What can be done with a look as a whole, at its bead. */
import { Popover } from '@base-ui/react/popover';
import { useId, useRef } from 'react';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { changeLength } from '../../../engine/edit/offers/length.ts';
import { limits } from '../../../engine/piece/limits.ts';
import type { Look, Piece } from '../../../engine/piece/schema.ts';
import { NumberField } from '../controls/NumberField.tsx';
import { Fault } from '../shell/Fault.tsx';
import { whatGoesWith } from './removal.ts';

interface Props {
  readonly piece: Piece;
  readonly look: Look;
  readonly anchor: HTMLElement | null;
  readonly fault: Diagnostic | null;
  readonly attempt: (edit: Edit) => boolean;
  readonly onMove: (to: number) => void;
  readonly onRename: () => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
  readonly onClose: () => void;
}

export function LookCard(props: Props) {
  const { piece, look, anchor, fault, attempt } = props;
  const back = useRef(anchor);
  back.current = anchor;
  const { name } = look;
  const index = piece.looks.indexOf(look);
  const isOnly = piece.looks.length === 1;
  const gone = whatGoesWith(piece, name);
  return (
    <Popover.Root
      open
      onOpenChange={(open) => {
        if (!open) props.onClose();
      }}
    >
      <Popover.Portal>
        <Popover.Positioner anchor={anchor} sideOffset={8} collisionPadding={10} className="over-all">
          <Popover.Popup className="card" finalFocus={back}>
            <Popover.Title className="card-title">{name}</Popover.Title>
            <div className="card-fields">
              <NumberField
                label="Lasts"
                unit="s"
                value={look.lengthMilliseconds / 1000}
                min={0.02}
                max={limits.lookMilliseconds / 1000}
                step={0.5}
                onNumber={(seconds) => {
                  const { value } = changeLength(piece, name, Math.round(seconds * 1000));
                  if (value !== undefined) attempt(value);
                }}
              />
              <p className="whisper">then it begins again; shorter, it cuts its clips</p>
              <NumberField
                label="Dissolves in over"
                unit="s"
                value={look.dissolveMilliseconds / 1000}
                min={0}
                max={limits.dissolveMilliseconds / 1000}
                step={0.1}
                onNumber={(seconds) =>
                  attempt({
                    kind: 'set-look',
                    look: name,
                    set: { dissolveMilliseconds: Math.round(seconds * 1000) },
                  })
                }
              />
              <MovesOn piece={piece} look={look} attempt={attempt} />
            </div>
            <Fault fault={fault} />
            <div className="card-actions">
              <button
                type="button"
                className="quiet"
                disabled={index === 0}
                onClick={() => props.onMove(index - 1)}
              >
                Earlier
              </button>
              <button
                type="button"
                className="quiet"
                disabled={index === piece.looks.length - 1}
                onClick={() => props.onMove(index + 1)}
              >
                Later
              </button>
              <button type="button" className="quiet" onClick={props.onRename}>
                Rename
              </button>
              <button type="button" className="quiet" onClick={props.onCopy}>
                Copy
              </button>
            </div>
            <div className="card-removal">
              <button type="button" className="quiet" disabled={isOnly} onClick={props.onRemove}>
                Remove
              </button>
              <p className="whisper">{isOnly ? 'A piece has at least one look.' : gone.join(' ')}</p>
            </div>
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}

/** What a timer begins with. */
const firstTimerMilliseconds = 30_000;
const nextLook = '';

function MovesOn({ piece, look, attempt }: Pick<Props, 'piece' | 'look' | 'attempt'>) {
  const id = useId();
  const to = useId();
  const { moveOn } = look;
  const set = (change: NonNullable<Look['moveOn']> | null) =>
    attempt({ kind: 'set-look', look: look.name, set: { moveOn: change } });
  return (
    <>
      <div className="number-field">
        <label htmlFor={id}>Moves on by itself</label>
        <input
          id={id}
          type="checkbox"
          className="switch"
          checked={moveOn !== undefined}
          onChange={(event) =>
            set(event.target.checked ? { afterMilliseconds: firstTimerMilliseconds } : null)
          }
        />
      </div>
      {moveOn !== undefined && (
        <>
          <NumberField
            label="after"
            unit="s"
            value={moveOn.afterMilliseconds / 1000}
            min={0.02}
            max={limits.lookMilliseconds / 1000}
            step={1}
            onNumber={(seconds) => set({ ...moveOn, afterMilliseconds: Math.round(seconds * 1000) })}
          />
          <div className="number-field">
            <label htmlFor={to}>to</label>
            <select
              id={to}
              value={moveOn.to ?? nextLook}
              onChange={({ target: { value } }) => {
                const { afterMilliseconds } = moveOn;
                set(value === nextLook ? { afterMilliseconds } : { afterMilliseconds, to: value });
              }}
            >
              <option value={nextLook}>the next look</option>
              {piece.looks.map(({ name }) => (
                <option key={name} value={name}>
                  {name === look.name ? `${name}, from its start` : name}
                </option>
              ))}
            </select>
          </div>
        </>
      )}
    </>
  );
}
