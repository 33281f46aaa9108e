/** The head of a track on the loom: its name, and the way to what can be done with it. */
import { lazy, Suspense, useRef, useState } from 'react';
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';

const TrackCard = lazy(() => import('./TrackCard.tsx').then(({ TrackCard }) => ({ default: TrackCard })));

/** Tracks have a name only if they were given one. */
export function trackTitle(look: Look, track: number): string {
  return look.tracks[track]?.name ?? `track ${track + 1}`;
}

export function TrackHead({ look, track }: { look: Look; track: number }) {
  const session = useSession();
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const title = trackTitle(look, track);
  return (
    <div className="track-head">
      <button
        ref={button}
        type="button"
        aria-haspopup="dialog"
        aria-expanded={open}
        title={title}
        onClick={() => setOpen(true)}
      >
        {title}
      </button>
      {open && (
        <Suspense>
          <TrackCard
            look={look}
            at={{ look: look.name, track }}
            title={title}
            anchor={button}
            onEdit={(edit) => session.edit(edit)}
            onClose={() => setOpen(false)}
          />
        </Suspense>
      )}
    </div>
  );
}
