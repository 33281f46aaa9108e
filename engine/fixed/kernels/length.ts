import type { Range } from '../integers.ts';
import { type Kernel, largest32 } from './kernel.ts';
import { wholeRoot } from './root.ts';

/**
 * Length of a vector in the format of its components. All are shifted down together until each has 15
 * bits, so that the squares fit 32; what is lost is below one part in 16,000.
 */
function lengthOf(...components: number[]): number {
  let shift = 0;
  const most = Math.max(...components.map(Math.abs));
  while (most >= 2 ** (15 + shift)) shift++;
  let sum = 0;
  for (const component of components) sum += Math.floor(Math.abs(component) / 2 ** shift) ** 2;
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
    min: Math.max(0, lengthOf(...least) - 2 * slack),
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
