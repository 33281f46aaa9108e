/** How long a stretch of the table is. */

import { lengthWords } from '../words.ts';
import { roundLength } from './camera.ts';
import { useCamera } from './context.ts';

export function ScaleBar() {
  const { millimetresPerPixel, size } = useCamera();
  const length = roundLength(millimetresPerPixel, 56);
  const across = length / millimetresPerPixel;
  return (
    <g className="scale-bar" transform={`translate(14.5 ${size.height - 16.5})`}>
      <path d={`M0 -5V0H${across.toFixed(1)}V-5`} />
      <text x={across / 2} y={-7}>
        {lengthWords(length)}
      </text>
    </g>
  );
}
