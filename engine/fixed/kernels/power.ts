import { logarithmTable, powerTable } from '../tables.ts';
import { type Kernel, largest32, rising } from './kernel.ts';

/** 2^x in 16.16; worst error one step and two parts in 100,000. Beyond the format: its largest value. */
function evaluateExp2(x: number): number {
  const whole = x >> 16;
  const index = (x >> 10) & 63;
  const low = powerTable[index]!;
  const mantissa = low + (((powerTable[index + 1]! - low) * (x & 1023)) >> 10);
  if (whole >= 15) return largest32;
  if (whole >= 0) return mantissa * 2 ** whole;
  return whole < -17 ? 0 : mantissa >> -whole;
}

export const exp2: Kernel = {
  takes: ['i32'],
  gives: 'i32',
  evaluate: evaluateExp2,
  range: rising(evaluateExp2),
  avrCycles: 330,
};

/** log2 x in 16.16; worst error 9e-5. -16 for 0 and below. */
function evaluateLog2(x: number): number {
  if (x <= 0) return -16 * 65536;
  const exponent = 31 - Math.clz32(x);
  const mantissa = exponent >= 16 ? x >> (exponent - 16) : x << (16 - exponent);
  const index = (mantissa >> 10) & 63;
  const low = logarithmTable[index]!;
  return (exponent - 16) * 65536 + low + (((logarithmTable[index + 1]! - low) * (mantissa & 1023)) >> 10);
}

export const log2: Kernel = {
  takes: ['i32'],
  gives: 'i32',
  evaluate: evaluateLog2,
  range: rising(evaluateLog2),
  avrCycles: 300,
};
