import { type Kernel, rising } from './kernel.ts';

/** Whole square root, rounded down. A correctly rounded double root of a value below 2^52 never crosses up. */
export const wholeRoot = (value: number) => Math.floor(Math.sqrt(value));

export const root: Kernel = {
  takes: ['u32'],
  gives: 'u16',
  evaluate: wholeRoot,
  range: rising(wholeRoot),
  avrCycles: 560,
};

/** Square root in 16.16: floor(sqrt(x * 2^16)); 0 below 0. */
const evaluateMedium = (value: number) => (value <= 0 ? 0 : wholeRoot(value * 65536));

export const rootMedium: Kernel = {
  takes: ['i32'],
  gives: 'i32',
  evaluate: evaluateMedium,
  range: rising(evaluateMedium),
  avrCycles: 900,
};
