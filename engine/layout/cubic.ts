/** Cubic Bezier curves: https://www.w3.org/TR/SVG2/paths.html draws the same with its C command. Millimetres. */

export type Place = readonly [x: number, y: number];

export interface Cubic {
  readonly start: Place;
  readonly firstControl: Place;
  readonly secondControl: Place;
  readonly end: Place;
}

/** Cut in two at a parameter by de Casteljau's construction; both together are the same curve. */
export function cutCubic(cubic: Cubic, at: number): readonly [Cubic, Cubic] {
  const { start, firstControl, secondControl, end } = cubic;
  const early = between(start, firstControl, at);
  const middle = between(firstControl, secondControl, at);
  const late = between(secondControl, end, at);
  const before = between(early, middle, at);
  const after = between(middle, late, at);
  const meeting = between(before, after, at);
  return [
    { start, firstControl: early, secondControl: before, end: meeting },
    { start: meeting, firstControl: after, secondControl: late, end },
  ];
}

export function pointOnCubic(cubic: Cubic, at: number): Place {
  return cutCubic(cubic, at)[0].end;
}

/** The point at a share of the straight way from one to another; beyond it for shares above 1. */
export function between([ax, ay]: Place, [bx, by]: Place, share: number): [x: number, y: number] {
  return [ax + (bx - ax) * share, ay + (by - ay) * share];
}

export function distance([ax, ay]: Place, [bx, by]: Place): number {
  return Math.hypot(bx - ax, by - ay);
}

/** From control point to control point: never shorter than the curve. */
export function lengthOfControls({ start, firstControl, secondControl, end }: Cubic): number {
  return distance(start, firstControl) + distance(firstControl, secondControl) + distance(secondControl, end);
}

/**
 * The direction in which the curve arrives, one millimetre long. Control points that lie on the end say
 * nothing of it, so the one before counts then. Undefined where the whole curve is one point.
 */
export function directionAtEnd({ start, firstControl, secondControl, end }: Cubic): Place | undefined {
  const from = [secondControl, firstControl, start].find(([x, y]) => x !== end[0] || y !== end[1]);
  if (from === undefined) return undefined;
  const length = distance(from, end);
  return [(end[0] - from[0]) / length, (end[1] - from[1]) / length];
}
