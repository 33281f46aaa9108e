/** Lines at round distances, and the two axes through the origin. */
import { roundLength, seenBox } from './camera.ts';
import { useCamera } from './context.ts';

/** Pixels between lines, at least: enough to count by, too few to be in the way. */
export const leastGridPixels = 22;

/** The distance of the lines: what a move on the grid snaps to. */
export function gridStep(millimetresPerPixel: number): number {
  return roundLength(millimetresPerPixel, leastGridPixels);
}

export function Grid() {
  const { camera, size, toView } = useCamera();
  const step = gridStep(camera.millimetresPerPixel);
  const { left, right, bottom, top } = seenBox(camera, size);
  const uprights = (x: number) => `M${crisp(toView({ x, y: 0 }).x)} 0V${size.height}`;
  const levels = (y: number) => `M0 ${crisp(toView({ x: 0, y }).y)}H${size.width}`;
  const lines = (every: number) =>
    [...multiples(left, right, every).map(uprights), ...multiples(bottom, top, every).map(levels)].join('');
  return (
    <g className="grid-lines">
      <path d={lines(step)} />
      <path d={lines(step * 5)} />
      <path className="axes" d={uprights(0) + levels(0)} />
    </g>
  );
}

function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** In the middle of a pixel, so that a line of one pixel is one pixel wide. */
function crisp(position: number): number {
  return Math.floor(position) + 0.5;
}
