/**
 * From pixels that a hand has chosen to the source of a zone that holds exactly these: this is how a lasso
 * becomes a zone. The source is made of stretches: pixels of one run at equal steps, counted as zones count,
 * without what is removed or hidden.
 */
import { pixelCount } from '../../layout/shapes.ts';
import { limits } from '../../piece/limits.ts';
import type { Piece, ZoneSource } from '../../piece/schema.ts';

export interface PixelOfRun {
  readonly run: string;
  /** In the run, before anything was removed. */
  readonly position: number;
}

/**
 * The shortest source of these pixels: a run, the whole piece, or every n-th of them where that is what they
 * are; else a union of runs, ranges and every n-th of these. Pixels that no zone may have (removed, hidden,
 * not there at all) are passed over, and one that is named twice counts once. Undefined if none is left.
 *
 * @param order `wire` numbers the pixels of the zone as they are wired, `given` as they were chosen
 */
export function sourceOfPixels(
  piece: Piece,
  pixels: readonly PixelOfRun[],
  order: 'wire' | 'given' = 'wire',
): ZoneSource | undefined {
  const visible = visiblePixels(piece);
  const known = new Map(visible.map((pixel) => [`${pixel.position} ${pixel.run.name}`, pixel]));
  const found = pixels.map(({ run, position }) => known.get(`${position} ${run}`));
  const chosen = [...new Set(found)].filter((pixel) => pixel !== undefined);
  if (order === 'wire') chosen.sort((a, b) => a.number - b.number);
  if (chosen.length === 0) return undefined;
  const reaches = reachesOf(chosen);
  if (reaches[0] === chosen.length) return sourceOfStretch(chosen);
  return sourceInAll(chosen, visible.length) ?? unionOf(cheapest(chosen, reaches).map(sourceOfStretch));
}

interface VisibleRun {
  readonly name: string;
  readonly count: number;
}

interface VisiblePixel {
  readonly run: VisibleRun;
  readonly position: number;
  /** Among the visible pixels of its run, and among all of the piece. */
  readonly index: number;
  readonly number: number;
}

/** One or more, at equal steps of `index` in one run. */
type Stretch = readonly VisiblePixel[];

function visiblePixels(piece: Piece): VisiblePixel[] {
  const pixels: VisiblePixel[] = [];
  for (const { name, flat, removed, hidden } of piece.lines.flatMap((line) => line.runs)) {
    const dark = new Set([...removed, ...hidden]);
    const positions = Array.from({ length: pixelCount(flat) }, (_, i) => i).filter((i) => !dark.has(i));
    const run: VisibleRun = { name, count: positions.length };
    for (const [index, position] of positions.entries()) {
      pixels.push({ run, position, index, number: pixels.length });
    }
  }
  return pixels;
}

/** For each pixel how many from it on make one stretch. */
function reachesOf(chosen: readonly VisiblePixel[]): number[] {
  const reaches: number[] = [];
  for (let i = chosen.length - 1; i >= 0; i--) {
    const step = stepFrom(chosen, i);
    const goesOn = step !== undefined && step === stepFrom(chosen, i + 1);
    reaches[i] = step === undefined ? 1 : goesOn ? reaches[i + 1]! + 1 : 2;
  }
  return reaches;
}

/** From a pixel to the next one, if that is in the same run. */
function stepFrom(chosen: readonly VisiblePixel[], i: number): number | undefined {
  const [pixel, next] = [chosen[i], chosen[i + 1]];
  return pixel === undefined || next?.run !== pixel.run ? undefined : next.index - pixel.index;
}

/**
 * The cut into stretches that takes the fewest words to say. What is left is never dearer for beginning
 * later, so that from each pixel only two ways are worth a try: alone, or as far as its stretch reaches.
 */
function cheapest(chosen: readonly VisiblePixel[], reaches: readonly number[]): Stretch[] {
  const costs: number[] = [];
  const lengths: number[] = [];
  costs[chosen.length] = 0;
  for (let i = chosen.length - 1; i >= 0; i--) {
    const alone = costs[i + 1]! + 1;
    const together = costs[i + reaches[i]!]! + (Math.abs(stepFrom(chosen, i) ?? 1) === 1 ? 1 : 2);
    costs[i] = Math.min(alone, together);
    lengths[i] = together < alone ? reaches[i]! : 1;
  }
  const stretches: Stretch[] = [];
  for (let i = 0; i < chosen.length; i += lengths[i]!) stretches.push(chosen.slice(i, i + lengths[i]!));
  return stretches;
}

function sourceOfStretch(stretch: Stretch): ZoneSource {
  const first = stretch[0]!;
  const last = stretch.at(-1)!;
  const { name, count } = first.run;
  const step = stepFrom(stretch, 0) ?? 1;
  const run: ZoneSource = { kind: 'run', run: name };
  if (isWhole(first.index, last.index, step, count)) return everyNth(run, step, first.index);
  const range: ZoneSource = { kind: 'range', run: name, first: first.position, last: last.position };
  return everyNth(range, Math.abs(step), 0);
}

/** The whole piece, or every n-th of its pixels across all runs, forward or back; undefined for anything else. */
function sourceInAll(chosen: readonly VisiblePixel[], count: number): ZoneSource | undefined {
  const first = chosen[0]!.number;
  const last = chosen.at(-1)!.number;
  const step = chosen[1]!.number - first;
  if (!chosen.every(({ number }, i) => number === first + i * step)) return undefined;
  const all: ZoneSource = { kind: 'all' };
  if (isWhole(first, last, step, count)) return everyNth(all, step, first);
  return isWhole(last, first, -step, count)
    ? { kind: 'reversed', of: everyNth(all, -step, last) }
    : undefined;
}

/** Whether steps from the first on go through all there is, forward, from end to end. */
function isWhole(first: number, last: number, step: number, count: number): boolean {
  return step > 0 && first < step && last + step >= count;
}

function everyNth(of: ZoneSource, every: number, offset: number): ZoneSource {
  return every === 1 ? of : { kind: 'stepped', of, every, offset };
}

/** In as many layers as the longest list that a file may have asks for. */
function unionOf(parts: readonly ZoneSource[]): ZoneSource {
  if (parts.length === 1) return parts[0]!;
  if (parts.length <= limits.zones) return { kind: 'union', of: [...parts] };
  const share = Math.ceil(parts.length / limits.zones);
  const bundles = Array.from({ length: Math.ceil(parts.length / share) }, (_, i) =>
    unionOf(parts.slice(i * share, (i + 1) * share)),
  );
  return { kind: 'union', of: bundles };
}
