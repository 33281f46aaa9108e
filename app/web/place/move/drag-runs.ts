/** Dragging runs over the table with the pointer. */
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { takeRuns, toggleRun } from '../in-hand.ts';
import type { SurfaceView } from '../surface/context.ts';
import { gridStep } from '../surface/Grid.tsx';
import { runsOf } from '../surface/places.ts';
import { type Moment, type Pull, startPull } from '../surface/pull.ts';
import { heldBy } from './actions.ts';
import { anchorsOf, snapMove } from './snapping.ts';

/** Pixels within which a line attracts. */
export const reachPixels = 7;

/** The pointer goes down on a run: takes it in hand, and what is in hand along. */
export function grabRun(
  event: React.PointerEvent<Element>,
  run: string,
  view: SurfaceView,
  session: Session,
  hand: Hand,
): void {
  const before = session.desk.runsInHand.get();
  const wasTaken = before.includes(run);
  if (event.shiftKey) {
    startPull(event, view, { click: () => toggleRun(session, run) });
    return;
  }
  session.endDrag();
  if (!wasTaken) takeRuns(session, [run]);
  startPull(event, view, { ...moveHeld(view, session, hand), click: () => takeRuns(session, [run]) });
}

/** What is in hand follows the pointer, and comes to rest in line with what lies still. */
export function moveHeld(view: SurfaceView, session: Session, hand: Hand): Pull {
  const held = heldBy(session);
  if (held === undefined) return {};
  const { side } = view;
  const anchors = held.runs.flatMap((run) => anchorsOf(run, side));
  const targets = runsOf(held.piece)
    .filter((run) => !held.runs.includes(run))
    .flatMap((run) => anchorsOf(run, side));
  const rest = () => hand.guides.set({ side, lines: [] });
  return {
    move(moment) {
      const way = wayOf(moment);
      const mm = view.millimetresPerPixel;
      const snapped =
        moment.free || !hand.snaps.get()
          ? { by: way, guides: [] }
          : snapMove(way, anchors, targets, reachPixels * mm, gridStep(mm));
      const by: [number, number] = [snapped.by.x, snapped.by.y];
      hand.guides.set({ side, lines: snapped.guides });
      session.edit({ kind: 'move-runs', side, runs: [...held.names], by }, 'pull');
    },
    end() {
      rest();
      session.endDrag();
    },
    bail() {
      rest();
      session.bailDrag();
    },
  };
}

/** Shift keeps a move level or upright, whichever is longer. */
function wayOf({ from, to, shift }: Moment): Point {
  const way = { x: to.x - from.x, y: to.y - from.y };
  if (!shift) return way;
  return Math.abs(way.x) > Math.abs(way.y) ? { x: way.x, y: 0 } : { x: 0, y: way.y };
}
