/** Paths: a strip laid along curves, as it would be glued along a drawn line. */
import type { Shape } from '../piece/schema.ts';
import { type MeasuredCubic, measureCubic, parameterAtLength } from './arc-length.ts';
import { between, type Cubic, cutCubic, directionAtEnd, type Place, pointOnCubic } from './cubic.ts';
import type { Point } from './layout.ts';

export type PathShape = Extract<Shape, { readonly kind: 'path' }>;

/** The curves of a path, each with the start that it takes over from the one before. */
export function cubicsOf({ start, curves }: Pick<PathShape, 'start' | 'curves'>): Cubic[] {
  return curves.map((curve, i) => ({ start: i === 0 ? start : curves[i - 1]!.end, ...curve }));
}

/** Millimetres from the first pixel to the end of the last curve, measured along the way. */
export function lengthOfPath(path: Pick<PathShape, 'start' | 'curves'>): number {
  return cubicsOf(path).reduce((sum, cubic) => sum + measureCubic(cubic).length, 0);
}

/**
 * So many places along the path at equal steps from its start; behind its end straight on. A path that is a
 * single point leads to the right.
 */
export function placesAlongPath({ start, curves, count, pitchMillimetres }: PathShape): Point[] {
  const cubics = cubicsOf({ start, curves });
  const measured = cubics.map(measureCubic);
  const places: Point[] = [];
  let current = 0;
  let passed = 0;
  for (let i = 0; i < count; i++) {
    const wanted = i * pitchMillimetres;
    while (current < measured.length && passed + measured[current]!.length < wanted) {
      passed += measured[current]!.length;
      current += 1;
    }
    const curve = measured[current];
    places.push(curve === undefined ? beyond(cubics, wanted - passed) : onCurve(curve, wanted - passed));
  }
  return places;
}

/**
 * The curves that pixels lie on: what is left behind the last of them is cut off, and what is missing up to
 * it is a straight curve more.
 */
export function cubicsUnderPixels({ start, curves, count, pitchMillimetres }: PathShape): Cubic[] {
  const cubics = cubicsOf({ start, curves });
  let left = (count - 1) * pitchMillimetres;
  for (const [i, cubic] of cubics.entries()) {
    const measured = measureCubic(cubic);
    if (left <= measured.length) {
      return [...cubics.slice(0, i), cutCubic(cubic, parameterAtLength(measured, left))[0]];
    }
    left -= measured.length;
  }
  const { end } = cubics.at(-1)!;
  const { x, y } = beyond(cubics, left);
  const third = (share: number) => between(end, [x, y], share);
  return [...cubics, { start: end, firstControl: third(1 / 3), secondControl: third(2 / 3), end: [x, y] }];
}

function onCurve(curve: MeasuredCubic, millimetres: number): Point {
  const [x, y] = pointOnCubic(curve.cubic, parameterAtLength(curve, millimetres));
  return { x, y };
}

function beyond(cubics: readonly Cubic[], millimetres: number): Point {
  const [x, y] = cubics.at(-1)!.end;
  const [dx, dy] = lastDirection(cubics);
  return { x: x + dx * millimetres, y: y + dy * millimetres };
}

function lastDirection(cubics: readonly Cubic[]): Place {
  for (const cubic of [...cubics].reverse()) {
    const direction = directionAtEnd(cubic);
    if (direction !== undefined) return direction;
  }
  return [1, 0];
}
