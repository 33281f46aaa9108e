/** Steps of a dial. */

/** About 400 steps over the range, at a round figure: finer than a hand, coarse enough to read. */
export function niceStep(range: number): number {
  const rough = range / 400;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough * 0.999) ?? 10;
  return step * power;
}
