import { sineTable } from '../tables.ts';
import type { Kernel } from './kernel.ts';

/** Sine of an angle in 1/65536 turns, as Q2.14; worst error 1e-4. */
function evaluate(turn: number): number {
  const quarter = turn >> 14;
  const within = turn & 0x3fff;
  const position = quarter & 1 ? 0x4000 - within : within;
  const low = sineTable[position >> 7]!;
  const value = low + (((sineTable[(position >> 7) + 1]! - low) * (position & 127)) >> 7);
  return quarter & 2 ? -value : value;
}

export const sine: Kernel = {
  takes: ['u16'],
  gives: 'i16',
  evaluate,
  range: ({ min, max }) =>
    min === max ? { min: evaluate(min), max: evaluate(min) } : { min: -16384, max: 16384 },
  avrCycles: 75,
};
