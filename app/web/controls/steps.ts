/** Steps of brightness, as bytes in the file and in percent on the page. */

/** To a digit behind the point, so that each byte has a percentage of its own. */
export const percentOf = (byte: number): number => Math.round((byte * 1000) / 255) / 10;
export const byteOf = (percent: number): number => Math.round((percent * 255) / 100);

/** One step set to another brightness; they keep rising, each once. */
export function withStep(steps: readonly number[], index: number, byte: number): number[] {
  const changed = steps.map((step, at) => (at === index ? Math.max(1, byte) : step));
  return [...new Set(changed)].sort((a, b) => a - b);
}

/** One more step in the middle of the widest gap, dark and full included; undefined where no gap is left. */
export function addedStep(steps: readonly number[]): number[] | undefined {
  const ends = [0, ...[...steps].sort((a, b) => a - b), 255];
  const gaps = ends
    .slice(1)
    .map((end, at) => ({ middle: Math.round((ends[at]! + end) / 2), room: end - ends[at]! }));
  const widest = gaps.reduce((best, gap) => (gap.room > best.room ? gap : best));
  return widest.room < 2 ? undefined : withStep([...steps, widest.middle], steps.length, widest.middle);
}
