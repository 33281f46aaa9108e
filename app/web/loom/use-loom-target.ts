/** The loom takes swatches: on a track, from the moment at which they are let go of. */
import { type RefObject, useEffect } from 'react';
import { layClip, placeForClip } from '../../../engine/edit/offers/lay-clip.ts';
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import type { SwatchAbove } from '../swatches/carry.ts';
import { takeInHand } from './clip-hands.ts';
import { wantedOnTrack } from './wanted.ts';

export function useLoomTarget(bed: RefObject<HTMLElement | null>, look: Look): void {
  const session = useSession();
  useEffect(() => {
    const target = bed.current;
    if (target === null) return;
    const wanted = (event: Event) => {
      const { detail } = event as CustomEvent<SwatchAbove>;
      const warp = (event.target as Element).closest<HTMLElement>('[data-track]');
      const { top, height } = target.getBoundingClientRect();
      if (warp === null || height === 0) return null;
      const share = (detail.clientY - top) / height;
      return wantedOnTrack(look, Number(warp.dataset.track), detail.pattern, share);
    };
    const above = (event: Event) => {
      const clip = wanted(event);
      if (clip !== null) session.desk.snapped.set(clip.atMilliseconds);
    };
    const gone = () => session.desk.snapped.set(null);
    const dropped = (event: Event) => {
      gone();
      const piece = session.bench.get().open?.piece;
      const clip = wanted(event);
      if (piece === undefined || clip === null) return;
      const place = placeForClip(piece, clip);
      session.edit(layClip(piece, clip));
      if (place === undefined || session.bench.get().editFaults.length > 0) return;
      takeInHand(session, place.at);
      session.announcement.set(`Laid on track ${place.at.track + 1}.`);
    };
    target.addEventListener('swatch-above', above);
    target.addEventListener('swatch-gone', gone);
    target.addEventListener('swatch-dropped', dropped);
    return () => {
      target.removeEventListener('swatch-above', above);
      target.removeEventListener('swatch-gone', gone);
      target.removeEventListener('swatch-dropped', dropped);
    };
  }, [session, bed, look]);
}
