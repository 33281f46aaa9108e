/** Taking runs in hand by drawing a box around their pixels. */

import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { takeRuns } from '../in-hand.ts';
import { type Box, boxBetween, holds } from '../surface/box.ts';
import type { SurfaceView } from '../surface/context.ts';
import { placesOf, runsOf, shapeOn } from '../surface/places.ts';
import { startPull } from '../surface/pull.ts';

/** Runs of which any pixel lies in the box. */
export function runsTouching(piece: Piece, side: Side, box: Box): string[] {
  return runsOf(piece)
    .filter((run) => placesOf(shapeOn(run, side)).some((place) => holds(box, place)))
    .map(({ name }) => name);
}

/** A finger pushes the table instead: it has nothing else to push it with. */
export function startMarquee(
  event: React.PointerEvent<Element>,
  view: SurfaceView,
  session: Session,
  hand: Hand,
): void {
  const piece = session.bench.get().open?.piece;
  if (piece === undefined) return;
  const before = event.shiftKey ? session.desk.runsInHand.get() : [];
  if (event.pointerType === 'touch') {
    let last = { x: event.clientX, y: event.clientY };
    startPull(event, view, {
      move(_, { clientX, clientY }) {
        view.push({ x: clientX - last.x, y: clientY - last.y });
        last = { x: clientX, y: clientY };
      },
      click: () => takeRuns(session, []),
    });
    return;
  }
  startPull(event, view, {
    move({ from, to }) {
      const box = boxBetween(from, to);
      hand.marquee.set({ side: view.side, box });
      const touched = runsTouching(piece, view.side, box);
      session.desk.runsInHand.set([...new Set([...before, ...touched])]);
    },
    end: () => hand.marquee.set(null),
    click: () => takeRuns(session, before),
    bail() {
      hand.marquee.set(null);
      takeRuns(session, before);
    },
  });
}
