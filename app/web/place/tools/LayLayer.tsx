/** Drawing a run from here to there. It is there from the first moment on, and grows with the drag. */
import type { PointerEvent } from 'react';
import { newRun } from '../../../../engine/edit/offers/add-run.ts';
import { snapPoint } from '../../../../engine/edit/snap/snap-plane.ts';
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
    const { drawn, laid } = layKinds[tool.shape];
    const adding = (shape: Shape) => newRun(piece, shape, tool.shape);
    startPull(event, view, {
      move({ from, to, free }) {
        const step = free || !hand.snaps.get() ? 0 : gridStep(view.millimetresPerPixel);
        const edit = adding(drawn(onGrid(from, step), onGrid(to, step), pitch));
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
