/** The place of one single pixel in numbers. */
import { useState } from 'react';
import type { ShapeOf } from '../../../../engine/edit/geometry/shape-of.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { NumberRow } from './NumberRow.tsx';

interface Props {
  readonly run: string;
  readonly shape: ShapeOf<'points'>;
}

const farthest = 100_000;

export function PixelRows({ run, shape }: Props) {
  const session = useSession();
  const side = useStore(session.desk.side);
  const [chosen, setChosen] = useState(0);
  const last = shape.points.length - 1;
  const index = Math.min(chosen, last);
  const [x, y] = shape.points[index]!;
  const put = (spot: [number, number]) => {
    const points = shape.points.map((point, i) => (i === index ? spot : point));
    session.edit({ kind: 'set-run', run, set: { [side]: { ...shape, points } } }, 'drag');
  };
  const place = { unit: 'mm', min: -farthest, max: farthest, step: 1, onRest: () => session.endDrag() };
  return (
    <>
      <NumberRow
        label="Pixel"
        unit={`of ${last}`}
        min={0}
        max={last}
        step={1}
        value={index}
        onChange={(to) => setChosen(Math.round(to))}
        onRest={() => undefined}
      />
      <NumberRow label="Lies across" value={x} {...place} onChange={(to) => put([to, y])} />
      <NumberRow label="Lies up" value={y} {...place} onChange={(to) => put([x, to])} />
    </>
  );
}
