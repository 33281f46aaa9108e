/**
 * Lengths along cubic Bezier curves, which no formula gives. The speed along the curve is integrated by
 * Gauss-Legendre quadrature, on halves of halves where one rule does not agree with two of half the width,
 * such as around a cusp. What is left is an error below a millionth of a millionth of the way from control
 * point to control point: a nanometre on a kilometre.
 */
import { type Cubic, lengthOfControls } from './cubic.ts';

/** A curve with its length, and with stretches of it in which one rule is as exact as it gets. */
export interface MeasuredCubic {
  readonly cubic: Cubic;
  readonly length: number;
  readonly stretches: readonly Stretch[];
}

interface Stretch {
  /** Parameters of the curve. */
  readonly from: number;
  readonly to: number;
  /** Millimetres from the start of the curve to where the stretch begins, and its own. */
  readonly passed: number;
  readonly length: number;
}

const relativeTolerance = 1e-13;

/** At a cusp a stretch is halved some twenty times before nothing of it matters any more. */
const mostHalvings = 30;

export function measureCubic(cubic: Cubic): MeasuredCubic {
  const speed = speedAlong(cubic);
  const tolerance = relativeTolerance * lengthOfControls(cubic);
  const stretches: Stretch[] = [];
  let passed = 0;
  const add = (from: number, to: number, length: number) => {
    stretches.push({ from, to, passed, length });
    passed += length;
  };
  const measure = (from: number, to: number, whole: number, halvings: number) => {
    const middle = (from + to) / 2;
    const left = integral(speed, from, middle);
    const right = integral(speed, middle, to);
    if (halvings === mostHalvings || Math.abs(left + right - whole) <= tolerance) {
      add(from, middle, left);
      add(middle, to, right);
    } else {
      measure(from, middle, left, halvings + 1);
      measure(middle, to, right, halvings + 1);
    }
  };
  measure(0, 1, integral(speed, 0, 1), 0);
  return { cubic, length: passed, stretches };
}

/** Newton's method doubles the digits each time; halving, where a curve stands still, adds one bit. */
const mostSteps = 60;

/** The parameter at which so many millimetres of the curve have passed, 0 to all of its length. */
export function parameterAtLength({ cubic, stretches }: MeasuredCubic, millimetres: number): number {
  const stretch = stretches.find(({ passed, length }) => millimetres <= passed + length) ?? stretches.at(-1)!;
  const wanted = millimetres - stretch.passed;
  const speed = speedAlong(cubic);
  const tolerance = relativeTolerance * lengthOfControls(cubic);
  let low = stretch.from;
  let high = stretch.to;
  let at = stretch.length > 0 ? low + ((high - low) * wanted) / stretch.length : low;
  for (let step = 0; step < mostSteps; step++) {
    const excess = integral(speed, stretch.from, at) - wanted;
    if (Math.abs(excess) <= tolerance) break;
    if (excess > 0) high = at;
    else low = at;
    const next = at - excess / speed(at);
    at = next > low && next < high ? next : (low + high) / 2;
  }
  return at;
}

type Speed = (at: number) => number;

/** Millimetres for each unit of the parameter: the length of the derivative. */
function speedAlong({ start, firstControl, secondControl, end }: Cubic): Speed {
  const [ax, ay] = [3 * (firstControl[0] - start[0]), 3 * (firstControl[1] - start[1])];
  const [bx, by] = [6 * (secondControl[0] - firstControl[0]), 6 * (secondControl[1] - firstControl[1])];
  const [cx, cy] = [3 * (end[0] - secondControl[0]), 3 * (end[1] - secondControl[1])];
  return (at) => {
    const left = 1 - at;
    const x = ax * left * left + bx * left * at + cx * at * at;
    const y = ay * left * left + by * left * at + cy * at * at;
    return Math.sqrt(x * x + y * y);
  };
}

function integral(speed: Speed, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (const [node, weight] of gaussLegendre) {
    sum += weight * (speed(middle - half * node) + speed(middle + half * node));
  }
  return half * sum;
}

/**
 * The sixteen nodes, one of each pair -x and x, with their weights: M. Abramowitz and I. Stegun, Handbook of
 * Mathematical Functions, table 25.4, n = 16.
 */
export const gaussLegendre: readonly (readonly [node: number, weight: number])[] = [
  [0.09501250983763744, 0.1894506104550685],
  [0.2816035507792589, 0.18260341504492358],
  [0.45801677765722737, 0.16915651939500254],
  [0.6178762444026438, 0.14959598881657674],
  [0.755404408355003, 0.12462897125553388],
  [0.8656312023878318, 0.09515851168249279],
  [0.9445750230732326, 0.062253523938647894],
  [0.9894009349916499, 0.027152459411754096],
];
