/** Moving the picture under a table; Shift and a drag turn it about its middle. */
import type { PointerEvent } from 'react';
import { tidyDegrees } from '../../../../engine/edit/geometry/plane.ts';
import { useSession } from '../../session/context.ts';
import { useCamera } from '../surface/context.ts';
import { type Moment, startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { garmentsOf } from './garments.ts';
import type { Placing } from './placing.ts';

export function ShiftLayer() {
  const session = useSession();
  const view = useCamera();
  const shelf = garmentsOf(session);
  const onDown = (event: PointerEvent<SVGRectElement>) => {
    const before = shelf.shown.get()[view.side]?.placing;
    if (before === undefined) return;
    session.desk.side.set(view.side);
    const follow = (moment: Moment) =>
      shelf.place(view.side, (moment.shift ? turned : moved)(before, moment));
    startPull(event, view, { move: follow, end: follow, bail: () => shelf.place(view.side, before) });
  };
  return <Cover onDown={onDown} />;
}

function moved(placing: Placing, { from, to }: Moment): Placing {
  const [x, y] = placing.middle;
  return { ...placing, middle: [x + to.x - from.x, y + to.y - from.y] };
}

function turned(placing: Placing, { from, to }: Moment): Placing {
  const [x, y] = placing.middle;
  const angle = (at: { x: number; y: number }) => Math.atan2(at.y - y, at.x - x);
  const degrees = ((angle(to) - angle(from)) * 180) / Math.PI;
  return { ...placing, degrees: tidyDegrees(placing.degrees + degrees) };
}
