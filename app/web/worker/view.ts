/** What the page is told of a prepared piece. */
import type { Zone } from '../../../engine/layout/layout.ts';
import type { Score } from '../../../engine/look/score.ts';
import type { PieceView } from './protocol.ts';

export function viewOf(score: Score): PieceView {
  const { pixels, output, current, looks } = score;
  return {
    places: Float32Array.from(pixels.flatMap(({ worn }) => [worn.x, worn.y])),
    hidden: Uint8Array.from(pixels, (pixel) => (pixel.hidden ? 1 : 0)),
    runs: Uint16Array.from(pixels, (pixel) => pixel.run),
    positions: Uint16Array.from(pixels, (pixel) => pixel.position),
    channels: output.channels,
    order: output.order,
    limitMilliamps: current.limitMilliamps,
    clips: looks.flatMap(({ clips }, look) =>
      clips.map(({ track, clip, zone }) => ({ look, track, clip, columns: columnsOf(zone) })),
    ),
  };
}

/** Twins share an index and show the same light; the first of them stands for all. */
function columnsOf(zone: Zone): Uint16Array {
  const first = new Map<number, number>();
  for (const { index, pixel } of zone.entries) if (!first.has(index)) first.set(index, pixel);
  return Uint16Array.from([...first].sort(([a], [b]) => a - b).map(([, pixel]) => pixel));
}
