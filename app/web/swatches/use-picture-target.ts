/** The picture takes swatches: one that is let go of there is laid on the run nearest to it. */
import { type RefObject, useEffect } from 'react';
import type { Piece } from '../../../engine/piece/schema.ts';
import { nearestRun } from '../picture/nearest.ts';
import { useSession } from '../session/context.ts';
import type { Session } from '../session/session.ts';
import type { SwatchAbove } from './carry.ts';
import { layOnRun } from './laying.ts';
import { useSpot } from './spot.ts';

/** @param picture the element with `data-takes-swatch`, as large as what is drawn */
export function usePictureTarget(picture: RefObject<HTMLElement | null>): void {
  const session = useSession();
  const spot = useSpot();
  useEffect(() => {
    const target = picture.current;
    if (target === null) return;
    const above = (event: Event) => {
      const meant = runMeant(session, target, (event as CustomEvent<SwatchAbove>).detail);
      session.desk.pointed.set(meant?.pixels ?? []);
    };
    const gone = () => session.desk.pointed.set([]);
    const dropped = (event: Event) => {
      const { detail } = event as CustomEvent<SwatchAbove>;
      const piece = session.bench.get().open?.piece;
      const meant = runMeant(session, target, detail);
      gone();
      const run = piece === undefined || meant === null ? undefined : runsOf(piece)[meant.run]?.name;
      const laying =
        piece === undefined || run === undefined ? null : layOnRun(piece, detail.pattern, run, spot());
      if (laying === null) return;
      session.edit(laying.edit);
      if (session.bench.get().editFaults.length > 0) return;
      session.selected.set(laying.at);
      session.announcement.set(`Laid on ${run}.`);
    };
    target.addEventListener('swatch-above', above);
    target.addEventListener('swatch-gone', gone);
    target.addEventListener('swatch-dropped', dropped);
    return () => {
      target.removeEventListener('swatch-above', above);
      target.removeEventListener('swatch-gone', gone);
      target.removeEventListener('swatch-dropped', dropped);
    };
  }, [session, picture, spot]);
}

const runsOf = (piece: Piece) => piece.lines.flatMap(({ runs }) => runs);

function runMeant(session: Session, target: HTMLElement, { clientX, clientY }: SwatchAbove) {
  const view = session.bench.get().open?.view;
  if (view === undefined) return null;
  const box = target.getBoundingClientRect();
  return nearestRun(view, box, clientX - box.left, clientY - box.top);
}
