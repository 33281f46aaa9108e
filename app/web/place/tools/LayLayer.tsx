/** Drawing a run from here to there. It is there from the first moment on, and grows with the drag. */
import type { PointerEvent } from 'react';
import { turnPoint } from '../../../../engine/edit/geometry/plane.ts';
import { newRun } from '../../../../engine/edit/offers/add-run.ts';
import { snapDegrees, snapPoint } from '../../../../engine/edit/snap/snap-plane.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Shape } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { type ToolOf, useHand } from '../hand.ts';
import { takeRuns } from '../in-hand.ts';
import { pitchOnHand } from '../lay/add.ts';
import { layKinds } from '../lay/kinds.ts';
import { useCamera } from '../surface/context.ts';
import { gridStep } from '../surface/Grid.tsx';
import { startPull } from '../surface/pull.ts';
import { Cover } from './Cover.tsx';

export function LayLayer({ tool }: { tool: ToolOf<'lay'> }) {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const onDown = (event: PointerEvent<SVGRectElement>) => {
    const piece = session.bench.get().open?.piece;
    if (piece === undefined) return;
    session.endDrag();
    const pitch = pitchOnHand(piece);
    const { drawn, laid, steady } = layKinds[tool.shape];
    const adding = (shape: Shape) => newRun(piece, shape, tool.shape);
    startPull(event, view, {
      move({ from, to, free }) {
        const step = free || !hand.snaps.get() ? 0 : gridStep(view.millimetresPerPixel);
        const start = onGrid(from, step);
        // The way that the hand went, from where its start came to lie.
        const way = { x: start.x + to.x - from.x, y: start.y + to.y - from.y };
        const end = step === 0 ? to : steady === 'direction' ? onRay(start, way) : onGrid(to, step);
        const edit = adding(drawn(start, end, pitch));
        session.edit(edit, 'pull');
        session.desk.runsInHand.set([edit.run.name]);
      },
      end() {
        session.endDrag();
        hand.putAway();
      },
      click({ to }) {
        const edit = adding(laid(to, pitch));
        session.edit(edit);
        takeRuns(session, [edit.run.name]);
        hand.putAway();
      },
      bail: () => session.bailDrag(),
    });
  };
  return <Cover onDown={onDown} />;
}

function onGrid({ x, y }: Point, step: number): Point {
  const [snappedX, snappedY] = snapPoint([x, y], step);
  return { x: snappedX, y: snappedY };
}

const turnStep = 15;

/** As far away, in the nearest steady direction. */
function onRay(from: Point, to: Point): Point {
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const [x, y] = turnPoint([to.x, to.y], [from.x, from.y], snapDegrees(degrees, turnStep) - degrees);
  return { x, y };
}
