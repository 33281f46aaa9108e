/** Interval arithmetic on raw integers: exact bounds of each operation before its result is wrapped. */
import { divide, floorModulo } from '../fixed/arithmetic.ts';
import { type IntType, type Range, rangeOf } from '../fixed/integers.ts';

export const constantRange = (value: number): Range => ({ min: value, max: value });
export const hull = (a: Range, b: Range): Range => ({
  min: Math.min(a.min, b.min),
  max: Math.max(a.max, b.max),
});
export const within = (inner: Range, outer: Range): boolean =>
  inner.min >= outer.min && inner.max <= outer.max;
export const fits = (range: Range, type: IntType): boolean => within(range, rangeOf[type]);

/** What is left of a range after wrapping to a type: itself where it fits, else anything. */
export const wrapped = (range: Range, type: IntType): Range => (fits(range, type) ? range : rangeOf[type]);

export const addRange = (a: Range, b: Range): Range => ({ min: a.min + b.min, max: a.max + b.max });
export const subRange = (a: Range, b: Range): Range => ({ min: a.min - b.max, max: a.max - b.min });

/** floor(a * b / 2^shift), exact even where the product needs 64 bits. */
function scaledProduct(a: number, b: number, shift: number): number {
  const product = a * b;
  if (Math.abs(product) <= 2 ** 53) return Math.floor(product / 2 ** shift);
  return Number((BigInt(a) * BigInt(b)) >> BigInt(shift));
}

export function mulRange(a: Range, b: Range, shift: number): Range {
  const corners = [
    scaledProduct(a.min, b.min, shift),
    scaledProduct(a.min, b.max, shift),
    scaledProduct(a.max, b.min, shift),
    scaledProduct(a.max, b.max, shift),
  ];
  return { min: Math.min(...corners), max: Math.max(...corners) };
}

export const shlRange = (a: Range, amount: number): Range => ({
  min: a.min * 2 ** amount,
  max: a.max * 2 ** amount,
});
export const shrRange = (a: Range, amount: number): Range => ({
  min: Math.floor(a.min / 2 ** amount),
  max: Math.floor(a.max / 2 ** amount),
});

/** The divisors nearest to 0 give the largest quotients; 0 itself gives 0. */
export function divRange(a: Range, b: Range, shift: number): Range {
  const divisors = [b.min, b.max];
  if (b.min <= -1 && b.max >= -1) divisors.push(-1);
  if (b.min <= 1 && b.max >= 1) divisors.push(1);
  const quotients = divisors.flatMap((d) =>
    d === 0 ? [0] : [divide(a.min, d, shift), divide(a.max, d, shift)],
  );
  if (b.min <= 0 && b.max >= 0) quotients.push(0);
  return { min: Math.min(...quotients), max: Math.max(...quotients) };
}

/** `%`: the sign of a, smaller in size than b. */
export function remRange(a: Range, b: Range): Range {
  const largest = Math.max(Math.abs(b.min), Math.abs(b.max)) - 1;
  if (largest < 0) return constantRange(0);
  return { min: Math.max(Math.min(a.min, 0), -largest), max: Math.min(Math.max(a.max, 0), largest) };
}

/** `mod`: the sign of b, smaller in size than b. */
export function modRange(a: Range, b: Range): Range {
  if (b.min === b.max && b.min > 0 && Math.floor(a.min / b.min) === Math.floor(a.max / b.min)) {
    return { min: floorModulo(a.min, b.min), max: floorModulo(a.max, b.min) };
  }
  return { min: Math.min(0, b.min + 1), max: Math.max(0, b.max - 1) };
}

export const minRange = (a: Range, b: Range): Range => ({
  min: Math.min(a.min, b.min),
  max: Math.min(a.max, b.max),
});
export const maxRange = (a: Range, b: Range): Range => ({
  min: Math.max(a.min, b.min),
  max: Math.max(a.max, b.max),
});
