import type { IntType, Range } from '../integers.ts';

export interface Kernel {
  readonly takes: readonly IntType[];
  readonly gives: IntType;
  /** Total: defined for every value of its operand types. */
  readonly evaluate: (...args: number[]) => number;
  /** Bounds of the result, given bounds of the operands; never too narrow. */
  readonly range: (...args: Range[]) => Range;
  /** Cycles on an ATmega328P, measured in an emulator or estimated from such measurements. */
  readonly avrCycles: number;
}

/** The range of a function that never falls. */
export const rising =
  (evaluate: (value: number) => number) =>
  ({ min, max }: Range): Range => ({ min: evaluate(min), max: evaluate(max) });

export const largest32 = 0x7fffffff;
