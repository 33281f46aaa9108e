/** One cubic Bezier piece of a curve. Millimetres, y up. */
import type { Position } from '../../../../engine/edit/geometry/plane.ts';

export type Spot = Readonly<Position>;

export interface Cubic {
  readonly start: Spot;
  readonly first: Spot;
  readonly second: Spot;
  readonly end: Spot;
}

export function between([ax, ay]: Spot, [bx, by]: Spot, share: number): Position {
  return [ax + (bx - ax) * share, ay + (by - ay) * share];
}

export function distance([ax, ay]: Spot, [bx, by]: Spot): number {
  return Math.hypot(bx - ax, by - ay);
}

/** A straight line as a cubic whose parameter runs evenly along it. */
export function lineAsCubic(start: Spot, end: Spot): Cubic {
  return { start, first: between(start, end, 1 / 3), second: between(start, end, 2 / 3), end };
}

/** A quadratic curve raised by one degree: the same curve, point by point. */
export function quadraticAsCubic(start: Spot, middle: Spot, end: Spot): Cubic {
  return { start, first: between(start, middle, 2 / 3), second: between(end, middle, 2 / 3), end };
}

/** Cut in two by de Casteljau's construction; both together are the same curve. */
export function cut({ start, first, second, end }: Cubic, share: number): readonly [Cubic, Cubic] {
  const early = between(start, first, share);
  const middle = between(first, second, share);
  const late = between(second, end, share);
  const before = between(early, middle, share);
  const after = between(middle, late, share);
  const at = between(before, after, share);
  return [
    { start, first: early, second: before, end: at },
    { start: at, first: after, second: late, end },
  ];
}

export function pointOn(cubic: Cubic, share: number): Spot {
  return cut(cubic, share)[0].end;
}

/** Fine enough that the nearest of so many points lies in the valley of the nearest point of all. */
const looks = 48;
const refinements = 40;

/** The parameter (0 to 1) of the point on the piece that lies nearest to a spot. */
export function nearestShare(cubic: Cubic, spot: Spot): number {
  const far = (share: number) => distance(pointOn(cubic, share), spot);
  let best = 0;
  for (let i = 1; i <= looks; i++) if (far(i / looks) < far(best)) best = i / looks;
  let low = Math.max(0, best - 1 / looks);
  let high = Math.min(1, best + 1 / looks);
  for (let i = 0; i < refinements; i++) {
    const third = (high - low) / 3;
    if (far(low + third) < far(high - third)) high -= third;
    else low += third;
  }
  return (low + high) / 2;
}
