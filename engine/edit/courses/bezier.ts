/** Easing curves cut in two. */
import { type Bezier, type Easing, ease, easingTable, namedBeziers } from '../../look/easing.ts';

/** How far the eased value has come after this share of the way, as the engine draws it. */
export function easedShare(easing: Easing, share: number): number {
  return ease(easingTable(easing), Math.floor(share * 65536)) / 65536;
}

/**
 * The easing of what is left of a way after a share of it (above 0, below 1); undefined where no easing of
 * CSS has that form, such as one that comes back from beyond its end.
 */
export function restOfEasing(easing: Easing, share: number): Easing | undefined {
  const bezier = typeof easing === 'string' ? namedBeziers[easing] : easing;
  return bezier === undefined ? easing : restOfBezier(bezier, share);
}

/** By de Casteljau's construction: the second half of the curve, stretched to the whole square again. */
function restOfBezier([x1, y1, x2, y2]: Bezier, share: number): Easing | undefined {
  const at = parameterAt(x1, x2, share);
  const x = secondHalf(x1, x2, at);
  const y = secondHalf(y1, y2, at);
  const rest = [stretched(x, 1), stretched(y, 1), stretched(x, 2), stretched(y, 2)] as const;
  const isEasing = rest.every((value, i) => (i % 2 === 0 ? value >= 0 && value <= 1 : Math.abs(value) <= 4));
  return isEasing ? [...rest] : undefined;
}

type Half = readonly [start: number, first: number, second: number];

/** Control points of one coordinate from a parameter on; the last one stays 1. */
function secondHalf(first: number, second: number, at: number): Half {
  const between = (a: number, b: number) => a + (b - a) * at;
  const early = between(0, first);
  const middle = between(first, second);
  const late = between(second, 1);
  return [between(between(early, middle), between(middle, late)), between(middle, late), late];
}

function stretched(half: Half, point: 1 | 2): number {
  return (half[point] - half[0]) / (1 - half[0]);
}

/** The parameter at which the curve has this x, by halving: x never falls along it. */
function parameterAt(x1: number, x2: number, x: number): number {
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 48; halving++) {
    const middle = (low + high) / 2;
    if (secondHalf(x1, x2, middle)[0] < x) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
