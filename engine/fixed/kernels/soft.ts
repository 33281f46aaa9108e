import type { Range } from '../integers.ts';
import type { Kernel } from './kernel.ts';

/**
 * The soft step t * t * (3 - 2t) of 0..1 in Q2.14, spelled t^2 + 2 (t^2 - t^3) so that no part leaves
 * -2..2. Worst error three steps. The last truncation can gain one step, hence the limit.
 */
function evaluate(position: number): number {
  const t = Math.min(16384, Math.max(0, position));
  const square = (t * t) >> 14;
  return Math.min(16384, square + 2 * (square - ((square * t) >> 14)));
}

/** Where the square stands still and the cube steps on, the curve falls by two for one step. */
function range({ min, max }: Range): Range {
  if (min === max) return { min: evaluate(min), max: evaluate(max) };
  return { min: Math.max(0, evaluate(min) - 2), max: Math.min(16384, evaluate(max) + 2) };
}

export const soft: Kernel = {
  takes: ['i16'],
  gives: 'i16',
  evaluate,
  range,
  avrCycles: 75,
};
