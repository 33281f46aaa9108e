/** Easing functions by the names of CSS Easing Functions Level 1, as tables of 65 entries. */
export const easingNames = [
  'linear',
  'ease',
  'ease-in',
  'ease-out',
  'ease-in-out',
  'step-start',
  'step-end',
] as const;
export type EasingName = (typeof easingNames)[number];
/** A name, or the four numbers of `cubic-bezier(x1, y1, x2, y2)`. */
export type Easing = EasingName | readonly [number, number, number, number];

/** The four numbers of `cubic-bezier(x1, y1, x2, y2)`. */
export type Bezier = readonly [x1: number, y1: number, x2: number, y2: number];

/** The curves that have a name: CSS Easing Functions Level 1, section 2.2.1. */
const curves = {
  ease: [0.25, 0.1, 0.25, 1],
  'ease-in': [0.42, 0, 1, 1],
  'ease-out': [0, 0, 0.58, 1],
  'ease-in-out': [0.42, 0, 0.58, 1],
} as const satisfies Partial<Record<EasingName, Bezier>>;

export const namedBeziers: Partial<Record<EasingName, Bezier>> = curves;

const segments = 64;
const one = 65536;

function table(y: (x: number) => number): Int32Array {
  return Int32Array.from({ length: segments + 1 }, (_, i) => Math.round(one * y(i / segments)));
}

/** CSS Easing Functions Level 1, section 2.2, with the end points (0, 0) and (1, 1). */
function bezierTable([x1, y1, x2, y2]: Bezier): Int32Array {
  return table((x) => coordinate(y1, y2, solve(x1, x2, x)));
}

/** One coordinate of the curve at parameter t. */
function coordinate(first: number, second: number, t: number): number {
  const rest = 1 - t;
  return 3 * rest * rest * t * first + 3 * rest * t * t * second + t * t * t;
}

/**
 * The parameter at which the curve has this x, which never falls as x1 and x2 lie in 0..1. By halving:
 * slower than Newton's method, but it needs no care where the curve is steep or flat.
 */
function solve(x1: number, x2: number, x: number): number {
  if (x <= 0 || x >= 1) return x;
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 48; halving++) {
    const middle = (low + high) / 2;
    if (coordinate(x1, x2, middle) < x) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * A step holds one value up to the next key, which then takes over; so its table is flat to the end,
 * and interpolation inside the last segment cannot blur it.
 */
const namedTables: Record<EasingName, Int32Array> = {
  linear: table((x) => x),
  ease: bezierTable(curves.ease),
  'ease-in': bezierTable(curves['ease-in']),
  'ease-out': bezierTable(curves['ease-out']),
  'ease-in-out': bezierTable(curves['ease-in-out']),
  'step-start': table(() => 1),
  'step-end': table(() => 0),
};

/** 65 entries in 16.16: how far the value has come at i / 64 of the way, `round(65536 * y)`. */
export function easingTable(easing: Easing): Int32Array {
  return typeof easing === 'string' ? namedTables[easing] : bezierTable(easing);
}

/** The eased way, in 16.16, at x of 0..65535 of the way: linear inside a segment, floored. */
export function ease(easing: Int32Array, x: number): number {
  const segment = x >> 10;
  const from = easing[segment]!;
  return from + (((easing[segment + 1]! - from) * (x & 1023)) >> 10);
}
