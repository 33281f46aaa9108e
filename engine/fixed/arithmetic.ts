/**
 * The fixed-point operations, each defined once, on exact integers. Results are not yet wrapped: the
 * caller wraps them to the type of the operation. A result beyond 2^53 is given modulo 2^32, which no
 * wrap can tell from the exact one.
 */

const wordSize = 2 ** 32;
const exactLimit = 2 ** 53;

/** floor(a * b / 2^shift) for operands of up to 32 bits, signed or not; shift 0..32. */
export function multiply(a: number, b: number, shift: number): number {
  const product = a * b;
  if (Math.abs(product) <= exactLimit) return Math.floor(product / 2 ** shift) + 0;
  // a = high * 2^16 + low with 0 <= low < 2^16; both partial products stay below 2^49.
  const high = Math.floor(a / 65536);
  const partHigh = high * b;
  const partLow = (a - high * 65536) * b;
  if (shift >= 16) {
    return Math.floor((partHigh + Math.floor(partLow / 65536)) / 2 ** (shift - 16));
  }
  return (((partHigh | 0) * 2 ** (16 - shift)) % wordSize) + Math.floor(partLow / 2 ** shift);
}

/** trunc(a * 2^shift / b) for operands of up to 32 bits and shift 0..20; 0 where b is 0. */
export function divide(a: number, b: number, shift: number): number {
  // The numerator stays below 2^53, and a quotient of exact integers this small never rounds across
  // a whole number: its distance from one is at least 1 / b.
  return b === 0 ? 0 : Math.trunc((a * 2 ** shift) / b) + 0;
}

/** Sign of the dividend; 0 where b is 0. */
export function remainder(a: number, b: number): number {
  return b === 0 ? 0 : (a % b) + 0;
}

/** Sign of the divisor; 0 where b is 0. */
export function floorModulo(a: number, b: number): number {
  return b === 0 ? 0 : a - Math.floor(a / b) * b + 0;
}
