/** What can be done with a track as a whole, at its head. */
import { Popover } from '@base-ui/react/popover';
import { type RefObject, useId, useState } from 'react';
import type { Edit } from '../../../engine/edit/edit.ts';
import type { TrackAddress } from '../../../engine/edit/kinds/addresses.ts';
import type { Look } from '../../../engine/piece/schema.ts';

interface Props {
  readonly look: Look;
  readonly at: TrackAddress;
  readonly title: string;
  readonly anchor: RefObject<HTMLButtonElement | null>;
  readonly onEdit: (edit: Edit) => void;
  readonly onClose: () => void;
}

export function TrackCard({ look, at, title, anchor, onEdit, onClose }: Props) {
  const id = useId();
  const track = look.tracks[at.track]!;
  const [draft, setDraft] = useState(track.name ?? '');
  const rename = () => {
    const name = draft.trim();
    if (name !== (track.name ?? ''))
      onEdit({ kind: 'set-track', at, set: { name: name === '' ? null : name } });
  };
  const move = (to: number) => {
    onEdit({ kind: 'reorder-track', at, to });
    onClose();
  };
  const clips = track.clips.length;
  return (
    <Popover.Root
      open
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Popover.Portal>
        <Popover.Positioner anchor={anchor} sideOffset={6} collisionPadding={10} className="over-all">
          <Popover.Popup className="card" finalFocus={anchor}>
            <Popover.Title className="card-title">{title}</Popover.Title>
            <div className="card-fields">
              <div className="number-field">
                <label htmlFor={id}>Name</label>
                <input
                  id={id}
                  type="text"
                  value={draft}
                  maxLength={40}
                  spellCheck={false}
                  onChange={(event) => setDraft(event.target.value)}
                  onBlur={rename}
                  onKeyDown={(event) => {
                    if (event.key !== 'Enter') return;
                    rename();
                    onClose();
                  }}
                />
              </div>
              <p className="whisper">
                Tracks lie on each other like layers of cloth: the leftmost at the bottom, this one{' '}
                {at.track === 0 ? 'there' : `on ${at.track} of them`}.
              </p>
            </div>
            <div className="card-actions">
              <button
                type="button"
                className="quiet"
                disabled={at.track === 0}
                onClick={() => move(at.track - 1)}
              >
                Lower
              </button>
              <button
                type="button"
                className="quiet"
                disabled={at.track === look.tracks.length - 1}
                onClick={() => move(at.track + 1)}
              >
                Higher
              </button>
            </div>
            <div className="card-removal">
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  onEdit({ kind: 'remove-track', at });
                  onClose();
                }}
              >
                Remove
              </button>
              <p className="whisper">
                {clips === 0
                  ? 'Nothing lies on it.'
                  : `Its ${clips === 1 ? 'clip goes' : `${clips} clips go`} too.`}
              </p>
            </div>
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}
