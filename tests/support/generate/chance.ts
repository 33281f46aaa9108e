/** Repeatable chance: the same seed gives the same piece on every computer. */

/** xorshift32, the triple 13, 17, 5 (G. Marsaglia, Xorshift RNGs, Journal of Statistical Software 8, 2003). */
export class Chance {
  private state: number;

  constructor(seed: number) {
    // Neighbouring seeds are spread over the whole word (Knuth, TAOCP 3, 6.4), as xorshift keeps them close.
    this.state = (Math.imul(seed + 1, 2654435769) ^ 0x5bd1e995) >>> 0 || 1;
    for (let warmUp = 0; warmUp < 8; warmUp++) this.next();
  }

  /** From 0 up to 1, without 1. */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x >>> 0;
    return this.state / 2 ** 32;
  }

  /** True with this probability. */
  flip(probability = 0.5): boolean {
    return this.next() < probability;
  }

  /** Both ends included. */
  whole(min: number, max: number): number {
    return min + Math.floor(this.next() * (max - min + 1));
  }

  /** Between the two, with so many digits behind the point: what a maker would type. */
  number(min: number, max: number, digits = 3): number {
    const value = Number((min + this.next() * (max - min)).toFixed(digits));
    return Math.min(max, Math.max(min, value));
  }

  pick<T>(choices: readonly T[]): T {
    return choices[this.whole(0, choices.length - 1)]!;
  }

  /** So many of them, each at most once, in their order. */
  some<T>(choices: readonly T[], count: number): T[] {
    const left = choices.map((_, index) => index);
    while (left.length > count) left.splice(this.whole(0, left.length - 1), 1);
    return left.map((index) => choices[index]!);
  }

  list<T>(count: number, make: (index: number) => T): T[] {
    return Array.from({ length: count }, (_, index) => make(index));
  }

  colour(): string {
    // Plain primaries now and then: full and empty channels are edges of their own.
    const channel = () => (this.flip(0.15) ? this.pick([0, 255]) : this.whole(0, 255));
    return `#${this.list(3, () => channel().toString(16).padStart(2, '0')).join('')}`;
  }
}
