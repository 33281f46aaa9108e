/** The head of a track on the loom: its name, and the way to what can be done with it. */
import { lazy, Suspense, useRef, useState } from 'react';
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { editTracks } from './edit-tracks.ts';
import type { TrackDraw } from './use-track-drag.ts';

const TrackCard = lazy(() => import('./TrackCard.tsx').then(({ TrackCard }) => ({ default: TrackCard })));

/** Tracks have a name only if they were given one. */
export function trackTitle(look: Look, track: number): string {
  return look.tracks[track]?.name ?? `track ${track + 1}`;
}

interface Props {
  readonly look: Look;
  readonly track: number;
  /** Drawing it along by its head: see `useTrackDrag`. */
  readonly draw: TrackDraw;
}

/** Whoever meets layers first is told where they lie. */
function layerWords({ tracks }: Look, track: number): string {
  if (tracks.length < 2) return '';
  return track === 0 ? 'bottom' : track === tracks.length - 1 ? 'top' : '';
}

export function TrackHead({ look, track, draw }: Props) {
  const session = useSession();
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const title = trackTitle(look, track);
  return (
    <div
      className="track-head"
      data-drawn={draw.drawn}
      style={{ transform: draw.offset === 0 ? undefined : `translateX(${draw.offset}px)` }}
      {...draw.handlers}
    >
      <button
        ref={button}
        type="button"
        aria-haspopup="dialog"
        aria-expanded={open}
        title={title}
        onClick={() => setOpen(true)}
      >
        {title}
        <span className="layer">{layerWords(look, track)}</span>
      </button>
      {open && (
        <Suspense>
          <TrackCard
            look={look}
            at={{ look: look.name, track }}
            title={title}
            anchor={button}
            onEdit={(edit) => editTracks(session, edit)}
            onClose={() => setOpen(false)}
          />
        </Suspense>
      )}
    </div>
  );
}
