/** A clip on its track: a cloth of what it alone paints, to be taken in hand. */
import type { Look, Piece } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { duration } from '../session/words.ts';
import type { ClipView } from '../worker/protocol.ts';
import { patternTitle } from './pattern-of.ts';

/** The clip in hand is woven first, then the look's own cloth, then the other clips. */
const firstPriority = 10;

interface Props {
  readonly piece: Piece;
  readonly look: Look;
  readonly trackName: string;
  readonly view: ClipView;
  /** Of a cloth that is as long as the look. */
  readonly rows: number;
}

export function ClipOnTrack({ piece, look, trackName, view, rows }: Props) {
  const session = useSession();
  const library = useStore(session.loft.library);
  const selected = useStore(session.selected);
  const clip = look.tracks[view.track]?.clips[view.clip];
  if (clip === undefined) return null;
  const length = look.lengthMilliseconds;
  const start = Math.min(length, clip.startMilliseconds);
  const end = clip.endless ? length : Math.min(length, start + clip.lengthMilliseconds);
  const from = start / length;
  const to = end / length;
  const isSelected =
    selected?.look === view.look && selected.track === view.track && selected.clip === view.clip;
  const title = patternTitle(clip.pattern, library);
  const isOwn = piece.patterns.some((pattern) => pattern.name === clip.pattern);
  return (
    <button
      type="button"
      className="clip"
      style={{ top: `${from * 100}%`, height: `${(to - from) * 100}%` }}
      aria-pressed={isSelected}
      aria-label={`${title}, track ${trackName}, ${duration(start)} to ${duration(end)}`}
      onClick={() => session.selected.set({ look: view.look, track: view.track, clip: view.clip })}
    >
      <ClothCanvas
        look={view.look}
        clip={view}
        columns={view.columns}
        rows={Math.max(1, Math.round(rows * (to - from)))}
        fromMs={0}
        toMs={end - start}
        priority={isSelected ? 0 : firstPriority + view.track}
      />
      <span className="clip-name" data-own={isOwn} aria-hidden="true">
        {title}
      </span>
    </button>
  );
}
