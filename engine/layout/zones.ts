/**
 * From the source of a zone to its entries. Removed and hidden pixels are in no zone, and indices count
 * what is left, without gaps where a run or a range has some.
 *
 * What the sources do to indices:
 * - `all`, `run`, `range`: 0, 1, 2 ... in data order; a range whose `first` is larger runs backwards.
 * - `stepped`: of the indices offset, offset + every, offset + 2 every ... it makes 0, 1, 2 ...
 * - `reversed`: index i becomes count - 1 - i.
 * - `union`: the indices of each part go on where those of the part before it ended.
 * - `twins`: each part keeps its own indices, so parts run side by side; the longest has the count.
 */
import type { Diagnostic } from '../diagnostic.ts';
import type { ZoneSource } from '../piece/schema.ts';
import type { Zone, ZoneEntry } from './layout.ts';

/** What sources are made from. */
export interface Ground {
  /** Addresses of all visible pixels, in data order. */
  readonly all: readonly number[];
  readonly runs: ReadonlyMap<string, RunGround>;
}

export interface RunGround {
  /** Addresses of the visible pixels, in data order, and the position in the run of each. */
  readonly addresses: readonly number[];
  readonly positions: readonly number[];
}

/** Entries in the order of their indices, twins side by side: a zone still without name and places. */
export type Selection = Pick<Zone, 'entries' | 'count'>;

export type Selected =
  | { readonly selection: Selection; readonly fault?: undefined }
  | { readonly selection?: undefined; readonly fault: Diagnostic };

/**
 * The pixels of a source whose runs exist, each once; or the first pixel that it takes twice.
 * An unknown run has no pixels here: `piece/checks/zones.ts` reports it.
 */
export function selectPixels(source: ZoneSource, ground: Ground, path: string): Selected {
  const { count, pixelsAt } = columns(source, ground);
  const entries: ZoneEntry[] = [];
  const taken = new Set<number>();
  // However large the count: when every visible pixel is taken, the next column takes one twice.
  for (let index = 0; index < count; index++) {
    for (const pixel of pixelsAt(index)) {
      if (taken.has(pixel)) return { fault: twice(pixel, ground, path) };
      taken.add(pixel);
      entries.push({ pixel, index });
    }
  }
  return { selection: { entries, count } };
}

/**
 * A source asked column by column, so that no list is built of what another source leaves out again:
 * a zone costs what it holds, not what a hostile file makes it pass by.
 */
interface Columns {
  readonly count: number;
  /** One pixel or more for every index from 0 to count - 1. */
  pixelsAt(index: number): readonly number[];
}

type SourceOf<Kind extends ZoneSource['kind']> = Extract<ZoneSource, { kind: Kind }>;

const columnsOf: {
  readonly [Kind in ZoneSource['kind']]: (source: SourceOf<Kind>, ground: Ground) => Columns;
} = {
  all: (_, ground) => inOrder(ground.all),

  run: ({ run }, ground) => inOrder(ground.runs.get(run)?.addresses ?? []),

  range({ run, first, last }, ground) {
    const { addresses, positions } = ground.runs.get(run) ?? { addresses: [], positions: [] };
    const from = firstAbove(positions, Math.min(first, last) - 1);
    const count = firstAbove(positions, Math.max(first, last)) - from;
    const at = (index: number) => addresses[first > last ? from + count - 1 - index : from + index]!;
    return { count, pixelsAt: (index) => [at(index)] };
  },

  stepped({ of, every, offset }, ground) {
    const { count, pixelsAt } = columns(of, ground);
    return {
      count: Math.max(0, Math.ceil((count - offset) / every)),
      pixelsAt: (index) => pixelsAt(offset + index * every),
    };
  },

  reversed({ of }, ground) {
    const { count, pixelsAt } = columns(of, ground);
    return { count, pixelsAt: (index) => pixelsAt(count - 1 - index) };
  },

  union({ of }, ground) {
    const parts = of.map((part) => columns(part, ground)).filter(({ count }) => count > 0);
    const ends: number[] = [];
    for (const { count } of parts) ends.push((ends.at(-1) ?? 0) + count);
    return {
      count: ends.at(-1) ?? 0,
      pixelsAt(index) {
        const part = firstAbove(ends, index);
        return parts[part]!.pixelsAt(index - (ends[part - 1] ?? 0));
      },
    };
  },

  twins({ of }, ground) {
    const parts = of.map((part) => columns(part, ground));
    return {
      count: Math.max(0, ...parts.map(({ count }) => count)),
      pixelsAt: (index) => parts.flatMap((part) => (index < part.count ? part.pixelsAt(index) : [])),
    };
  },
};

function columns(source: ZoneSource, ground: Ground): Columns {
  return columnsOf[source.kind](source as never, ground);
}

function inOrder(pixels: readonly number[]): Columns {
  return { count: pixels.length, pixelsAt: (index) => [pixels[index]!] };
}

/** Position of the first of rising numbers that is greater than a value. */
function firstAbove(rising: readonly number[], value: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! > value) high = middle;
    else low = middle + 1;
  }
  return low;
}

function twice(pixel: number, ground: Ground, path: string): Diagnostic {
  const [name, run] = [...ground.runs].find(([, { addresses }]) => addresses.includes(pixel))!;
  const position = run.positions[run.addresses.indexOf(pixel)];
  return {
    code: 'zone-pixel-twice',
    severity: 'error',
    message: `The pixel at position ${position} of the run "${name}" comes twice in this zone.`,
    advice: 'Choose parts that do not overlap; a pixel has one index in a zone.',
    path,
  };
}
