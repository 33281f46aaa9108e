/** The way from point to point. */
import type { Position } from './plane.ts';

type Way = readonly Readonly<Position>[];

export function lengthOf(way: Way): number {
  let length = 0;
  for (let i = 1; i < way.length; i++) length += distance(way[i - 1]!, way[i]!);
  return length;
}

/** So many points along the way, at equal steps from its start; beyond its end straight on. */
export function respaced(way: Way, step: number, count: number): Position[] {
  const points: Position[] = [];
  let segment = 0;
  let passed = 0;
  for (let i = 0; i < count; i++) {
    const wanted = i * step;
    let length = segmentLength(way, segment);
    while (segment < way.length - 2 && passed + length < wanted) {
      passed += length;
      segment += 1;
      length = segmentLength(way, segment);
    }
    points.push(onSegment(way, segment, wanted - passed));
  }
  return points;
}

function segmentLength(way: Way, segment: number): number {
  const end = way[segment + 1];
  return end === undefined ? 0 : distance(way[segment]!, end);
}

/** A way of one point, or of two at the same place, leads to the right. */
function onSegment(way: Way, segment: number, along: number): Position {
  const [x, y] = way[segment]!;
  const length = segmentLength(way, segment);
  if (length === 0) return [x + along, y];
  const [endX, endY] = way[segment + 1]!;
  const share = along / length;
  return [x + (endX - x) * share, y + (endY - y) * share];
}

function distance(a: Readonly<Position>, b: Readonly<Position>): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
