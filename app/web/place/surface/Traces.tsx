/** What is seen only while a hand moves: lines that it snapped to, the box being drawn around runs, words. */
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { useCamera } from './context.ts';

export function Guides() {
  const { guides } = useHand();
  const shown = useStore(guides);
  const { side, toView, size } = useCamera();
  if (shown.side !== side) return null;
  return (
    <g className="guides">
      {shown.lines.map(({ axis, at, kind }) => {
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
  const drawn = useStore(marquee);
  const { side, toView } = useCamera();
  if (drawn?.side !== side) return null;
  const { box } = drawn;
  const [a, b] = [toView({ x: box.left, y: box.top }), toView({ x: box.right, y: box.bottom })];
  return <rect className="marquee" x={a.x} y={a.y} width={b.x - a.x} height={b.y - a.y} />;
}

/** What the pull comes to, beside the pointer. */
export function ReadoutWords() {
  const { readout } = useHand();
  const shown = useStore(readout);
  const { side, toView, size } = useCamera();
  if (shown?.side !== side) return null;
  const { x, y } = toView(shown.at);
  const leftwards = x > size.width - 170;
  return (
    <text
      className="readout"
      x={leftwards ? x - 18 : x + 18}
      y={Math.max(20, y - 14)}
      data-leftwards={leftwards}
    >
      {shown.words}
    </text>
  );
}
