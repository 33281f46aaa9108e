/** A clip on its track: a cloth of what it alone paints, to be taken in hand, moved and shaped. */
import { memo, type PointerEvent, useMemo } from 'react';
import type { Clip } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import { FadeVeil } from '../loom/FadeVeil.tsx';
import { useClipKeys } from '../loom/use-clip-keys.ts';
import { useColumnPointing, useColumns } from '../loom/use-columns.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { duration } from '../session/words.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { patternTitle } from './pattern-of.ts';

/** The clip in hand is woven first, then the look's own cloth, then the other clips. */
const firstPriority = 10;

interface Props {
  readonly clip: Clip;
  readonly look: number;
  readonly track: number;
  readonly index: number;
  readonly trackName: string;
  readonly lookMilliseconds: number;
  /** The pixel of each index of its zone. */
  readonly wired: Uint16Array;
  readonly places: Float32Array;
  readonly isOwn: boolean;
  /** Of a cloth that is as long as the look. */
  readonly rows: number;
  readonly onPull: (event: PointerEvent, at: ClipPosition, lengthMilliseconds: number) => void;
}

export const ClipOnTrack = memo(function ClipOnTrack(props: Props) {
  const { clip, look, track, index, lookMilliseconds: length, trackName } = props;
  const session = useSession();
  const library = useStore(session.loft.library);
  const isInHand = usePart(
    session.selected,
    (at) => at?.look === look && at.track === track && at.clip === index,
  );
  const at = useMemo(() => ({ look, track, clip: index }), [look, track, index]);
  const columns = useColumns(props.wired, props.places);
  const { walk, pointing } = useColumnPointing(columns);
  const onKeyDown = useClipKeys(at, walk);
  const start = Math.min(length, clip.startMilliseconds);
  const end = clip.endless ? length : Math.min(length, start + clip.lengthMilliseconds);
  const from = start / length;
  const to = end / length;
  const title = patternTitle(clip.pattern, library);
  return (
    <button
      type="button"
      className="clip"
      data-clip={`${look}.${track}.${index}`}
      style={{ top: `${from * 100}%`, height: `${(to - from) * 100}%` }}
      aria-pressed={isInHand}
      aria-label={`${title}, track ${trackName}, ${duration(start)} to ${duration(end)}`}
      aria-keyshortcuts="ArrowUp ArrowDown ArrowLeft ArrowRight S I O Delete"
      onPointerDown={(event) => props.onPull(event, at, length)}
      onClick={() => session.selected.set(at)}
      onKeyDown={onKeyDown}
      onBlur={() => session.endDrag()}
      {...pointing}
    >
      <ClothCanvas
        look={look}
        clip={at}
        columns={columns}
        rows={Math.max(1, Math.round(props.rows * (to - from)))}
        fromMs={0}
        toMs={end - start}
        priority={isInHand ? 0 : firstPriority + track}
      />
      <FadeVeil clip={clip} shownMilliseconds={Math.max(1, end - start)} />
      <span className="clip-name" data-own={props.isOwn} aria-hidden="true">
        {title}
      </span>
    </button>
  );
});
