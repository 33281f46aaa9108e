/** Steps of a dial, and figures to go with them. */

/** About 400 steps over the range, at a round figure: finer than a hand, coarse enough to read. */
export function niceStep(range: number): number {
  const rough = range / 400;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough * 0.999) ?? 10;
  return step * power;
}

/** As many digits as the step has. */
export function tidy(value: number, step: number): string {
  const digits = Math.min(4, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return String(Number(value.toFixed(digits)));
}
