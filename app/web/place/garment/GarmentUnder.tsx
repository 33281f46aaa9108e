/** The picture of the garment, under everything that lies on a table. */
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useCamera } from '../surface/context.ts';
import { garmentsOf } from './garments.ts';

export function GarmentUnder() {
  const session = useSession();
  const { side, toView, millimetresPerPixel } = useCamera();
  const garment = useStore(garmentsOf(session).shown)[side];
  if (garment === null) return null;
  const { url, size, placing } = garment;
  const [x, y] = placing.middle;
  const middle = toView({ x, y });
  const scale = placing.millimetresPerPixel / millimetresPerPixel;
  return (
    <image
      className="garment"
      href={url}
      x={-size.width / 2}
      y={-size.height / 2}
      width={size.width}
      height={size.height}
      preserveAspectRatio="none"
      opacity={placing.opacity}
      transform={`translate(${middle.x} ${middle.y}) rotate(${-placing.degrees}) scale(${scale})`}
    />
  );
}
