/** Sources of zones, taken apart and put together again. */
import type { ZoneSource } from '../piece/schema.ts';
import { same } from './same.ts';

/** What names pixels by itself. */
export type Leaf = Extract<ZoneSource, { kind: 'all' | 'run' | 'range' }>;

/**
 * The source with each leaf exchanged, or taken out where nothing comes in its place; undefined if nothing
 * is left. A single part that is left of several stands by itself. What stays the same is shared.
 */
export function mapLeaves(
  source: ZoneSource,
  change: (leaf: Leaf) => ZoneSource | undefined,
): ZoneSource | undefined {
  switch (source.kind) {
    case 'all':
    case 'run':
    case 'range':
      return change(source);
    case 'stepped':
    case 'reversed': {
      const of = mapLeaves(source.of, change);
      if (of === undefined) return undefined;
      return of === source.of ? source : { ...source, of };
    }
    case 'union':
    case 'twins': {
      const of = source.of.map((part) => mapLeaves(part, change)).filter((part) => part !== undefined);
      if (of.length === source.of.length) return same(of, source.of) ? source : { ...source, of };
      return of.length > 1 ? { ...source, of } : of[0];
    }
  }
}

/** The source with another run in the place of one. */
export function followRun(source: ZoneSource, follow: (run: string) => string): ZoneSource {
  const followed = mapLeaves(source, (leaf) => {
    if (leaf.kind === 'all') return leaf;
    const run = follow(leaf.run);
    return run === leaf.run ? leaf : { ...leaf, run };
  });
  return followed ?? source;
}

export function sourceWithoutRun(source: ZoneSource, run: string): ZoneSource | undefined {
  return mapLeaves(source, (leaf) => (leaf.kind !== 'all' && leaf.run === run ? undefined : leaf));
}

/** The source of a run that has only so many pixels any more: its ranges end there. */
export function sourceUpTo(source: ZoneSource, run: string, count: number): ZoneSource | undefined {
  return mapLeaves(source, (leaf) => {
    if (leaf.kind !== 'range' || leaf.run !== run || Math.max(leaf.first, leaf.last) < count) return leaf;
    if (Math.min(leaf.first, leaf.last) >= count) return undefined;
    return { ...leaf, first: Math.min(leaf.first, count - 1), last: Math.min(leaf.last, count - 1) };
  });
}
