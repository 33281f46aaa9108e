/**
 * From the sources of a zone to its entries. Removed and hidden pixels are in no zone, and indices
 * count what is left, without gaps where a run or a range has some.
 *
 * What the sources do to indices:
 * - `all`, `run`, `range`: 0, 1, 2 ... in data order; a range whose `first` is larger runs backwards.
 * - `stepped`: keeps the indices offset, offset + every, offset + 2 every ... and numbers them 0, 1, 2 ...
 * - `reversed`: index i becomes count - 1 - i.
 * - `union`: the indices of each part go on where those of the part before it ended.
 * - `twins`: each part keeps its own indices, so parts run side by side; count is that of the longest.
 */
import type { Diagnostic } from '../diagnostic.ts';
import type { ZoneSource } from '../piece/schema.ts';
import type { Zone, ZoneEntry } from './layout.ts';

/** The zones that can be had without a source: everything, and the runs by name. */
export interface Ground {
  /** Addresses of all visible pixels, in data order. */
  readonly all: readonly number[];
  /** Address of each position of a run; undefined where the pixel is removed or hidden. */
  readonly runs: ReadonlyMap<string, readonly (number | undefined)[]>;
}

/** Entries and their number of indices: a zone still without name and places. */
export type Selection = Pick<Zone, 'entries' | 'count'>;

export type Selected =
  | { readonly selection: Selection; readonly fault?: undefined }
  | { readonly selection?: undefined; readonly fault: Diagnostic };

/** The pixels of a source; or why there are none: a run that does not exist, or a pixel chosen twice. */
export function selectPixels(source: ZoneSource, ground: Ground, path: string): Selected {
  switch (source.kind) {
    case 'all':
      return { selection: inOrder(ground.all) };
    case 'run':
      return selectRange(source.run, 0, Number.POSITIVE_INFINITY, ground, path);
    case 'range':
      return selectRange(source.run, source.first, source.last, ground, path);
    case 'stepped':
      return mapSelection(selectPixels(source.of, ground, `${path}.of`), ({ entries }) => {
        const kept = entries
          .filter(({ index }) => index >= source.offset && (index - source.offset) % source.every === 0)
          .map(({ pixel, index }) => ({ pixel, index: (index - source.offset) / source.every }));
        return { entries: kept, count: countOf(kept) };
      });
    case 'reversed':
      return mapSelection(selectPixels(source.of, ground, `${path}.of`), ({ entries, count }) => ({
        entries: entries.map(({ pixel, index }) => ({ pixel, index: count - 1 - index })),
        count,
      }));
    case 'union':
      return join(source.of, ground, path, (joined, part) => joined + part.count);
    case 'twins':
      return join(source.of, ground, path, () => 0);
  }
}

/** @param shift what is added to the indices of the part behind those of `count` indices */
function join(
  sources: readonly ZoneSource[],
  ground: Ground,
  path: string,
  shiftBehind: (shift: number, part: Selection) => number,
): Selected {
  const entries: ZoneEntry[] = [];
  const taken = new Set<number>();
  let shift = 0;
  for (const [i, source] of sources.entries()) {
    const partPath = `${path}.of[${i}]`;
    const part = selectPixels(source, ground, partPath);
    if (part.selection === undefined) return part;
    for (const { pixel, index } of part.selection.entries) {
      if (taken.has(pixel)) return { fault: twice(partPath) };
      taken.add(pixel);
      entries.push({ pixel, index: index + shift });
    }
    shift = shiftBehind(shift, part.selection);
  }
  return { selection: { entries, count: countOf(entries) } };
}

function selectRange(run: string, first: number, last: number, ground: Ground, path: string): Selected {
  const addresses = ground.runs.get(run);
  if (addresses === undefined) {
    const message = `There is no run "${run}".`;
    return {
      fault: { code: 'run-unknown', severity: 'error', message, advice: 'Choose a run of the line.', path },
    };
  }
  const stretch = addresses.slice(Math.min(first, last), Math.max(first, last) + 1);
  if (first > last) stretch.reverse();
  return { selection: inOrder(stretch.filter((pixel) => pixel !== undefined)) };
}

function inOrder(pixels: readonly number[]): Selection {
  return { entries: pixels.map((pixel, index) => ({ pixel, index })), count: pixels.length };
}

function mapSelection(selected: Selected, change: (selection: Selection) => Selection): Selected {
  return selected.selection === undefined ? selected : { selection: change(selected.selection) };
}

function countOf(entries: readonly ZoneEntry[]): number {
  return entries.reduce((count, { index }) => Math.max(count, index + 1), 0);
}

function twice(path: string): Diagnostic {
  return {
    code: 'zone-pixel-twice',
    severity: 'error',
    message: 'A pixel comes twice in this zone.',
    advice: 'Choose parts that do not overlap; a pixel has one index in a zone.',
    path,
  };
}
