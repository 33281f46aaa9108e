/** Laying pixels down one by one: where the pointer taps, or where the crosshair stands that keys move. */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { snapPoint } from '../../../../engine/edit/snap/snap-plane.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSession } from '../../session/context.ts';
import { useHand } from '../hand.ts';
import { runsInHand, takeRuns } from '../in-hand.ts';
import { onePixelMore } from '../lay/dots.ts';
import { useCamera } from '../surface/context.ts';
import { gridStep } from '../surface/Grid.tsx';
import { startPull } from '../surface/pull.ts';
import { Cover } from './Cover.tsx';

const strides: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

export function DotLayer() {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const { side, camera, millimetresPerPixel, toView } = view;
  const [spot, setSpot] = useState<Point>(camera.middle);
  const crosshair = useRef<SVGGElement>(null);
  const isFlat = side === 'flat';
  // Keys go on where the pointer began.
  useEffect(() => {
    if (isFlat) crosshair.current?.focus();
  }, [isFlat]);
  // Where a run is worn is decided once it lies on the bench.
  if (!isFlat) return null;

  const step = hand.snaps.get() ? gridStep(millimetresPerPixel) / 2 : 0;
  const snapped = ({ x, y }: Point): Point => {
    const [snappedX, snappedY] = snapPoint([x, y], step);
    return { x: snappedX, y: snappedY };
  };

  const lay = (at: Point) => {
    const piece = session.bench.get().open?.piece;
    if (piece === undefined) return;
    const { run, edit } = onePixelMore(piece, runsInHand(session), at);
    session.edit(edit);
    takeRuns(session, [run]);
    setSpot(at);
  };

  const onDown = (event: PointerEvent<SVGRectElement>) =>
    startPull(event, view, { click: ({ to, free }) => lay(free ? to : snapped(to)) });

  const onKeyDown = (event: KeyboardEvent) => {
    const stride = strides[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (stride !== undefined) {
      const far = event.shiftKey ? 10 : 1;
      setSpot({ x: spot.x + stride.x * far, y: spot.y + stride.y * far });
    } else if (event.key === 'Enter' || event.key === ' ') lay(spot);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const { x, y } = toView(spot);
  return (
    <>
      <Cover onDown={onDown} />
      {/* biome-ignore lint/a11y/useSemanticElements: SVG has no button. */}
      <g
        className="crosshair"
        role="button"
        tabIndex={0}
        aria-label={`Crosshair at ${Math.round(spot.x)}, ${Math.round(spot.y)} millimetres: Enter lays a pixel, arrow keys move it`}
        transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
        ref={crosshair}
        onKeyDown={onKeyDown}
      >
        <path d="M-14 0H-5M5 0H14M0 -14V-5M0 5V14" />
      </g>
    </>
  );
}
