import { type Kernel, rising } from './kernel.ts';

/**
 * The soft step t * t * (3 - 2t) of 0..1 in Q2.14, spelled t^2 + 2 (t^2 - t^3) so that no part leaves
 * -2..2. The last truncation can gain one step, hence the limit.
 */
function evaluate(t: number): number {
  const square = (t * t) >> 14;
  return Math.min(16384, square + 2 * (square - ((square * t) >> 14)));
}

export const soft: Kernel = {
  takes: ['i16'],
  gives: 'i16',
  evaluate: (t) => evaluate(Math.min(16384, Math.max(0, t))),
  range: rising((t) => evaluate(Math.min(16384, Math.max(0, t)))),
  avrCycles: 75,
};
