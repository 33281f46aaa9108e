/** The two handles of the way from one key to the next: the inner points of its cubic-bezier. */
import type { Key } from '../../../../engine/edit/kinds/keys.ts';
import {
  type Bezier,
  type Easing,
  type EasingName,
  easingNames,
  namedBeziers,
} from '../../../../engine/look/easing.ts';

/** A point of the plot: time of the clip, and value. */
export interface Point {
  readonly ms: number;
  readonly value: number;
}

export type HandleIndex = 0 | 1;

/** A straight way by two handles on it: the same curve as `linear`. */
const straight: Bezier = [0.25, 0.25, 0.75, 0.75];

/** The four numbers that draw an easing; undefined for a step, which has no handles. */
export function bezierOf(easing: Easing): Bezier | undefined {
  if (typeof easing !== 'string') return easing;
  return easing === 'linear' ? straight : namedBeziers[easing];
}

export function handlePoint(from: Key, to: Key, bezier: Bezier, handle: HandleIndex): Point {
  const [x, y] = handle === 0 ? [bezier[0], bezier[1]] : [bezier[2], bezier[3]];
  const [a, b] = [Number(from.value), Number(to.value)];
  return {
    ms: from.atMilliseconds + x * (to.atMilliseconds - from.atMilliseconds),
    value: a + y * (b - a),
  };
}

/** The easing with one handle pulled to a point. Between equal values a handle has no height to say. */
export function pulled(from: Key, to: Key, bezier: Bezier, handle: HandleIndex, point: Point): Bezier {
  const [a, b] = [Number(from.value), Number(to.value)];
  const x = (point.ms - from.atMilliseconds) / (to.atMilliseconds - from.atMilliseconds);
  const y = a === b ? undefined : (point.value - a) / (b - a);
  return withHandle(bezier, handle, x, y ?? bezier[handle === 0 ? 1 : 3]);
}

/** As far as CSS lets x go, and the piece file y; to the hundredth, as a hand cannot mean more. */
export function withHandle(bezier: Bezier, handle: HandleIndex, x: number, y: number): Bezier {
  const [x1, y1, x2, y2] = bezier;
  const px = tidy(Math.min(1, Math.max(0, x)));
  const py = tidy(Math.min(4, Math.max(-4, y)));
  return handle === 0 ? [px, py, x2, y2] : [x1, y1, px, py];
}

function tidy(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** As CSS writes it. */
export function easingText(easing: Easing): string {
  return typeof easing === 'string' ? easing : `cubic-bezier(${easing.join(', ')})`;
}

const number = '\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+))\\s*';
const four = new RegExp(
  `^\\s*(?:cubic-bezier\\()?${[number, number, number, number].join(',')}\\)?\\s*$`,
  'i',
);

/** A name of CSS, or four numbers with or without `cubic-bezier()` around them; undefined for anything else. */
export function readEasing(text: string): Easing | undefined {
  const name = easingNames.find((one) => one === text.trim().toLowerCase()) satisfies EasingName | undefined;
  if (name !== undefined) return name;
  const found = four.exec(text);
  if (found === null) return undefined;
  const [x1, y1, x2, y2] = found.slice(1).map(Number) as [number, number, number, number];
  const fits = [x1, x2].every((x) => x >= 0 && x <= 1) && [y1, y2].every((y) => Math.abs(y) <= 4);
  return fits ? [x1, y1, x2, y2] : undefined;
}
