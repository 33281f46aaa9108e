import type { Kernel } from './kernel.ts';

/**
 * Mixes 16 bits: each input bit flips each output bit about half of the time (measured in the tests).
 * Multipliers and shifts of this kind of mixer are found by search; these are from memory, judged by that test.
 */
function mix(value: number): number {
  let x = value;
  x ^= x >> 8;
  x = Math.imul(x, 0x88b5) & 0xffff;
  x ^= x >> 7;
  x = Math.imul(x, 0xdb2d) & 0xffff;
  return x ^ (x >> 9);
}

const range = () => ({ min: 0, max: 0xffff });

export const hash: Kernel = { takes: ['u16'], gives: 'u16', evaluate: mix, range, avrCycles: 45 };

export const hash2: Kernel = {
  takes: ['u16', 'u16'],
  gives: 'u16',
  evaluate: (a, b) => mix((a + mix(b)) & 0xffff),
  range,
  avrCycles: 90,
};
