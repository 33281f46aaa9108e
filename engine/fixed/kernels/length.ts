import type { Range } from '../integers.ts';
import { type Kernel, largest32 } from './kernel.ts';
import { wholeRoot } from './root.ts';

/**
 * Length of a vector in the format of its components. All are shifted down together until each has 15
 * bits, so that the squares fit 32. Rounded down: what is lost is below one step or one part in 6,000.
 */
function lengthOf(x: number, y: number, z = 0): number {
  const [across, up, deep] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  const shift = Math.max(0, 17 - Math.clz32(Math.max(across, up, deep)));
  const sum = (across >>> shift) ** 2 + (up >>> shift) ** 2 + (deep >>> shift) ** 2;
  return Math.min(wholeRoot(sum) * 2 ** shift, largest32);
}

/** The longest vector bounds the length; the shortest lies at the components' smallest sizes. */
function range(...components: Range[]): Range {
  const most = components.map(({ min, max }) => Math.max(Math.abs(min), Math.abs(max)));
  const least = components.map(({ min, max }) =>
    min <= 0 && max >= 0 ? 0 : Math.min(Math.abs(min), Math.abs(max)),
  );
  // The common shift follows the largest component, so a larger one may round a smaller one down further.
  const slack = 2 ** Math.max(0, Math.ceil(Math.log2(Math.max(...most) + 1)) - 14);
  return {
    min: Math.max(0, lengthOf(...(least as [number, number, number?])) - 2 * slack),
    max: Math.min(largest32, Math.ceil(Math.hypot(...most))),
  };
}

export const length2: Kernel = {
  takes: ['i32', 'i32'],
  gives: 'i32',
  evaluate: lengthOf,
  range,
  avrCycles: 750,
};

export const length3: Kernel = {
  takes: ['i32', 'i32', 'i32'],
  gives: 'i32',
  evaluate: lengthOf,
  range,
  avrCycles: 850,
};
