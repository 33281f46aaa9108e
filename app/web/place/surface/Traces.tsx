/** What is seen only while a hand moves: lines that it snapped to, and the box being drawn around runs. */
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { useCamera } from './context.ts';

export function Guides() {
  const { guides } = useHand();
  const shown = useStore(guides);
  const { toView, size } = useCamera();
  return (
    <g className="guides">
      {shown.map(({ axis, at, kind }) => {
        const spot = toView({ x: at, y: at });
        return (
          <path
            key={axis}
            data-kind={kind}
            d={axis === 'x' ? `M${spot.x} 0V${size.height}` : `M0 ${spot.y}H${size.width}`}
          />
        );
      })}
    </g>
  );
}

export function Marquee() {
  const { marquee } = useHand();
  const box = useStore(marquee);
  const { toView } = useCamera();
  if (box === null) return null;
  const [a, b] = [toView({ x: box.left, y: box.top }), toView({ x: box.right, y: box.bottom })];
  return <rect className="marquee" x={a.x} y={a.y} width={b.x - a.x} height={b.y - a.y} />;
}
