/** What can be done on the loom beside pulling: with the clip in hand, with the tracks, with the view. */
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { clipInHand, doWithClip, pasteClip } from './clip-hands.ts';
import type { ClipTask } from './clip-keys.ts';
import { LoomKeys } from './LoomKeys.tsx';
import { mostZoom } from './zoom.ts';

const clipTasks: readonly { readonly task: ClipTask; readonly title: string; readonly tells: string }[] = [
  { task: 'split', title: 'Split', tells: 'Split the clip in hand where the shuttle stands (S)' },
  { task: 'again', title: 'Once more', tells: 'Lay the clip in hand once more, behind itself (Ctrl+D)' },
  { task: 'copy', title: 'Copy', tells: 'Copy the clip in hand, for this look or another (Ctrl+C)' },
  { task: 'remove', title: 'Remove', tells: 'Remove the clip in hand (Delete)' },
];

interface Props {
  readonly zoom: number;
  readonly onZoom: (zoom: number) => void;
  /** The wiring of some zone jumps about, so that its columns may be put in another order. */
  readonly scattered: boolean;
}

export function LoomBar({ zoom, onZoom, scattered }: Props) {
  const session = useSession();
  useStore(session.selected);
  const copied = useStore(session.desk.copied);
  const asPlaced = useStore(session.desk.columnsAsPlaced);
  const none = clipInHand(session) === null;
  return (
    <div className="loom-bar">
      <div role="toolbar" aria-label="The clip in hand">
        {clipTasks.map(({ task, title, tells }) => (
          <button
            key={task}
            type="button"
            className="quiet small"
            disabled={none}
            title={tells}
            onClick={() => doWithClip(session, task)}
          >
            {title}
          </button>
        ))}
        <button
          type="button"
          className="quiet small"
          disabled={copied === null}
          title="Lay what was copied where the shuttle stands (Ctrl+V)"
          onClick={() => pasteClip(session)}
        >
          Paste
        </button>
      </div>
      <div role="toolbar" aria-label="How the loom is seen">
        {(scattered || asPlaced) && (
          <button
            type="button"
            className="quiet small"
            aria-pressed={asPlaced}
            title="Columns in the order in which the pixels lie, instead of the way they are wired"
            onClick={() => session.desk.columnsAsPlaced.set(!asPlaced)}
          >
            as placed
          </button>
        )}
        <button
          type="button"
          className="quiet small"
          aria-label="Less of the time, larger"
          title="Less of the time, larger"
          disabled={zoom >= mostZoom}
          onClick={() => onZoom(Math.min(mostZoom, zoom * 2))}
        >
          +
        </button>
        <button
          type="button"
          className="quiet small"
          aria-label="More of the time, smaller"
          title="More of the time, smaller"
          disabled={zoom <= 1}
          onClick={() => onZoom(Math.max(1, zoom / 2))}
        >
          −
        </button>
        <button
          type="button"
          className="quiet small"
          title="The whole look at once"
          disabled={zoom === 1}
          onClick={() => onZoom(1)}
        >
          whole
        </button>
        <LoomKeys />
      </div>
    </div>
  );
}
