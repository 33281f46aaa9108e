/** A line dragged over something whose length is known; the tag asks for the millimetres. */
import type { PointerEvent } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useCamera } from '../surface/context.ts';
import { startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { garmentsOf } from './garments.ts';
import { toPicture, toTable } from './placing.ts';

export function MeasureLayer() {
  const session = useSession();
  const view = useCamera();
  const shelf = garmentsOf(session);
  const garment = useStore(shelf.shown)[view.side];
  if (garment === null) return null;
  const { placing, size, known } = garment;

  const onDown = (event: PointerEvent<SVGRectElement>) => {
    session.desk.side.set(view.side);
    const mark = (from: Point, to: Point) => {
      const spots = [from, to].map(({ x, y }) => toPicture(placing, size, [x, y]));
      const millimetres = Math.round(Math.hypot(to.x - from.x, to.y - from.y));
      shelf.put(view.side, { ...garment, known: { from: spots[0]!, to: spots[1]!, millimetres } });
    };
    startPull(event, view, {
      move: ({ from, to }) => mark(from, to),
      end: ({ from, to }) => {
        mark(from, to);
        document.getElementById(knownLengthId)?.focus();
      },
      bail: () => shelf.put(view.side, garment),
    });
  };

  const ends = known && [known.from, known.to].map((spot) => toTable(placing, size, spot));
  return (
    <g className="measuring">
      {ends && <Ruler ends={ends.map(([x, y]) => view.toView({ x, y }))} />}
      <Cover onDown={onDown} />
    </g>
  );
}

/** The field that is asked for the length when a line has been dragged. */
export const knownLengthId = 'garment-known-length';

function Ruler({ ends }: { ends: readonly Point[] }) {
  const [from, to] = ends as [Point, Point];
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return (
    <>
      <path d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
      {[from, to].map(({ x, y }, i) => (
        <path
          key={i === 0 ? 'from' : 'to'}
          d="M0 -9V9"
          transform={`translate(${x} ${y}) rotate(${degrees})`}
        />
      ))}
    </>
  );
}
