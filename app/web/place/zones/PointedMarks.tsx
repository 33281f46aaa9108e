/** On the table, the pixels that something on the page points at. */
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useCamera } from '../surface/context.ts';
import { dotsPath } from '../surface/outline.ts';
import { World } from '../surface/Surface.tsx';
import { layoutOf } from './layout-of.ts';

export function PointedMarks({ piece }: { piece: Piece }) {
  const pointed = useStore(useSession().desk.pointed);
  const { side } = useCamera();
  if (pointed.length === 0) return null;
  const { pixels } = layoutOf(piece);
  const places = pointed.flatMap((pixel) => pixels[pixel]?.[side] ?? []);
  return (
    <World className="pointed-marks">
      <path d={dotsPath(places)} />
    </World>
  );
}
