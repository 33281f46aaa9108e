/** A new curve drawn spot by spot: it goes smoothly through all of them. */
import { type PointerEvent, useEffect, useEffectEvent, useState } from 'react';
import { snapPoint } from '../../../../engine/edit/snap/snap-plane.ts';
import { distance, type Place } from '../../../../engine/layout/cubic.ts';
import { useSession } from '../../session/context.ts';
import { useHand } from '../hand.ts';
import { pitchOnHand } from '../lay/add.ts';
import { useCamera } from '../surface/context.ts';
import { gridStep } from '../surface/Grid.tsx';
import { placesOf } from '../surface/places.ts';
import { startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { pathData } from './draw-path.ts';
import { layLines } from './lay-lines.ts';
import { lineThrough } from './nodes.ts';
import { stripAlong } from './path-shape.ts';

/** A press so near to the first or last spot means that spot. */
const reachPixels = 14;

export function DrawLayer() {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const { side, toView, millimetresPerPixel } = view;
  const [spots, setSpots] = useState<readonly Place[]>([]);
  const [cursor, setCursor] = useState<Place | null>(null);

  const finish = (closed: boolean) => {
    if (spots.length >= 2) layLines(session, hand, [lineThrough(spots, closed && spots.length > 2)], 'curve');
    else hand.putAway();
  };
  const onKey = useEffectEvent((event: globalThis.KeyboardEvent) => {
    if (event.target instanceof Element && event.target.closest('input, textarea, select, button') !== null)
      return;
    if (event.key === 'Enter') finish(false);
    else if (event.key === 'Backspace' && spots.length > 0) setSpots(spots.slice(0, -1));
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  useEffect(() => {
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, []);
  // Where a run is worn is decided once it lies on the bench.
  if (side !== 'flat') return null;

  const step = hand.snaps.get() ? gridStep(millimetresPerPixel) / 2 : 0;
  const onDown = (event: PointerEvent<SVGRectElement>) => {
    session.desk.side.set(side);
    startPull(event, view, {
      click({ to, free }) {
        const at: Place = free ? [to.x, to.y] : snapPoint([to.x, to.y], step);
        const isNear = (spot: Place | undefined) =>
          spot !== undefined && distance(spot, [to.x, to.y]) < reachPixels * millimetresPerPixel;
        if (spots.length > 2 && isNear(spots[0])) finish(true);
        else if (spots.length > 1 && isNear(spots.at(-1))) finish(false);
        else if (!isNear(spots.at(-1))) setSpots([...spots, at]);
      },
    });
  };
  const onMove = (event: PointerEvent<SVGGElement>) => {
    const { x, y } = view.toMillimetres(event.clientX, event.clientY);
    setCursor([x, y]);
  };

  const shown = cursor === null ? spots : [...spots, cursor];
  const line = shown.length > 1 && spots.length > 0 ? lineThrough(shown, false) : undefined;
  const piece = session.bench.get().open?.piece;
  const strip = line && piece && stripAlong(line, pitchOnHand(piece));
  const seen = ([x, y]: Place): Place => {
    const at = toView({ x, y });
    return [at.x, at.y];
  };
  return (
    <g className="bending" onPointerMove={onMove}>
      {line && <path className="course" d={pathData(line, seen)} />}
      {strip &&
        placesOf(strip).map((place) => {
          const { x, y } = toView(place);
          return <circle className="dot" key={`${x} ${y}`} cx={x} cy={y} r="2" />;
        })}
      {spots.map((spot) => {
        const [x, y] = seen(spot);
        return <circle className="spot" key={`${x} ${y}`} cx={x} cy={y} r="6" />;
      })}
      <Cover onDown={onDown} />
    </g>
  );
}
