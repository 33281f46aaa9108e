/** More of cubic Bezier curves than the layout needs: lower degrees raised, and what lies nearest. */
import { between, type Cubic, distance, type Place, pointOnCubic } from '../../../../engine/layout/cubic.ts';

/** A straight line as a cubic whose parameter runs evenly along it. */
export function lineAsCubic(start: Place, end: Place): Cubic {
  return {
    start,
    firstControl: between(start, end, 1 / 3),
    secondControl: between(start, end, 2 / 3),
    end,
  };
}

/** A quadratic curve raised by one degree: the same curve, point by point. */
export function quadraticAsCubic(start: Place, control: Place, end: Place): Cubic {
  return {
    start,
    firstControl: between(start, control, 2 / 3),
    secondControl: between(end, control, 2 / 3),
    end,
  };
}

/** Fine enough that the nearest of so many points lies in the valley of the nearest point of all. */
const looks = 48;
const refinements = 40;

/** The parameter (0 to 1) of the point on the curve that lies nearest to a spot. */
export function nearestParameter(cubic: Cubic, spot: Place): number {
  const far = (at: number) => distance(pointOnCubic(cubic, at), spot);
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
