/** Zones: hand-made examples, and laws that hold for sources of any make. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Ground, type Selection, selectPixels } from '../../engine/layout/zones.ts';
import type { ZoneSource } from '../../engine/piece/schema.ts';

/** Two runs: five positions with 1 cut out and 2 hidden (addresses 0-3, 1 dark), then three (4-6). */
const ground: Ground = {
  all: [0, 2, 3, 4, 5, 6],
  runs: new Map([
    ['hem', { addresses: [0, 2, 3], positions: [0, 3, 4] }],
    ['cuff', { addresses: [4, 5, 6], positions: [0, 1, 2] }],
  ]),
};

function select(source: ZoneSource): Selection {
  const { selection, fault } = selectPixels(source, ground, 'source');
  expect(fault).toBeUndefined();
  return selection!;
}

/** Pixels from index 0 on; twins at one index are joined by +. */
function shown(source: ZoneSource): string {
  const { entries, count } = select(source);
  const at = (index: number) => entries.filter((entry) => entry.index === index).map(({ pixel }) => pixel);
  return Array.from({ length: count }, (_, index) => at(index).join('+')).join(' ');
}

const all: ZoneSource = { kind: 'all' };
const hem: ZoneSource = { kind: 'run', run: 'hem' };
const cuff: ZoneSource = { kind: 'run', run: 'cuff' };
const range = (run: string, first: number, last: number): ZoneSource => ({ kind: 'range', run, first, last });
const stepped = (of: ZoneSource, every: number, offset = 0): ZoneSource => ({
  kind: 'stepped',
  of,
  every,
  offset,
});
const reversed = (of: ZoneSource): ZoneSource => ({ kind: 'reversed', of });
const union = (...of: ZoneSource[]): ZoneSource => ({ kind: 'union', of });
const twins = (...of: ZoneSource[]): ZoneSource => ({ kind: 'twins', of });

describe('examples', () => {
  const examples: readonly [name: string, source: ZoneSource, pixels: string][] = [
    ['all leaves out what is dark', all, '0 2 3 4 5 6'],
    ['a run counts what is left', hem, '0 2 3'],
    ['a range counts positions before removal', range('hem', 1, 3), '2'],
    ['a range has both ends', range('cuff', 0, 2), '4 5 6'],
    ['a range may run backwards', range('hem', 4, 0), '3 2 0'],
    ['a range of one', range('cuff', 1, 1), '5'],
    ['every second', stepped(all, 2), '0 3 5'],
    ['every second from the second on', stepped(all, 2, 1), '2 4 6'],
    ['reversed', reversed(cuff), '6 5 4'],
    ['a union goes on counting', union(cuff, hem), '4 5 6 0 2 3'],
    [
      'a union passes over empty parts',
      union(range('hem', 1, 2), cuff, range('hem', 2, 1), hem),
      '4 5 6 0 2 3',
    ],
    ['twins share indices', twins(hem, cuff), '0+4 2+5 3+6'],
    ['unequal twins count as the longest', twins(range('hem', 0, 0), cuff), '0+4 5 6'],
    ['unequal twins, reversed, meet at the far end', reversed(twins(range('hem', 0, 0), cuff)), '6 5 0+4'],
    [
      'a union behind unequal twins begins after the longest',
      union(twins(range('hem', 0, 0), range('cuff', 0, 1)), range('cuff', 2, 2)),
      '0+4 5 6',
    ],
    ['steps keep twins together', stepped(twins(hem, cuff), 2), '0+4 3+6'],
    ['steps of reversed count from the far end', stepped(reversed(cuff), 2), '6 4'],
    ['steps may leave out what would come twice', stepped(union(cuff, reversed(cuff)), 3), '4 6'],
    ['a step beyond the end is empty', stepped(cuff, 2, 3), ''],
    ['a range of dark pixels is empty', range('hem', 1, 2), ''],
  ];
  test.each(examples)('%s', (_, source, pixels) => {
    expect(shown(source)).toBe(pixels);
  });
});

describe('a pixel taken twice is named', () => {
  const faults: readonly [name: string, source: ZoneSource, pixel: RegExp][] = [
    ['by overlapping parts', union(cuff, range('cuff', 2, 2)), /position 2 of the run "cuff"/],
    ['by overlapping twins', twins(all, range('hem', 3, 4)), /position 3 of the run "hem"/],
    ['deep inside', reversed(stepped(union(hem, hem), 1)), /position 4 of the run "hem"/],
  ];
  test.each(faults)('%s', (_, source, pixel) => {
    const { selection, fault } = selectPixels(source, ground, 'source');
    expect(selection).toBeUndefined();
    expect(fault).toMatchObject({ code: 'zone-pixel-twice', path: 'source', severity: 'error' });
    expect(fault?.message).toMatch(pixel);
  });
});

/** Sources of any make over a stretch of each run, so that no pixel comes twice. */
const sources = fc
  .tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 2 }), making(2), making(2))
  .map(([last, first, outer, inner]) => outer([range('hem', 0, last), inner([range('cuff', first, 2)])]));

type Make = (parts: readonly ZoneSource[]) => ZoneSource;

/** Joined in one of two ways, changed in one of three, and that some times over. */
function making(times: number): fc.Arbitrary<Make> {
  const join = fc.constantFrom(union, twins);
  const change = fc.oneof(
    fc.constant((source: ZoneSource) => source),
    fc.constant(reversed),
    fc.record({ every: fc.integer({ min: 1, max: 4 }), offset: fc.integer({ min: 0, max: 3 }) }).map(
      ({ every, offset }) =>
        (source: ZoneSource) =>
          stepped(source, every, offset),
    ),
  );
  const once = fc.tuple(join, change).map(
    ([joined, changed]): Make =>
      (parts) =>
        changed(joined(...parts)),
  );
  if (times <= 1) return once;
  return fc.tuple(once, making(times - 1)).map(
    ([outer, inner]): Make =>
      (parts) =>
        outer([inner(parts)]),
  );
}

describe('laws (seed 51)', () => {
  const law = (name: string, holds: (source: ZoneSource) => void) => {
    test(name, () => fc.assert(fc.property(sources, holds), { seed: 51, numRuns: 500 }));
  };

  law('each pixel at most once, dark ones never', (source) => {
    const pixels = select(source).entries.map(({ pixel }) => pixel);
    expect(new Set(pixels).size).toBe(pixels.length);
    for (const pixel of pixels) expect(ground.all).toContain(pixel);
  });

  law('indices from 0 to count - 1, without a gap', (source) => {
    const { entries, count } = select(source);
    const indices = new Set(entries.map(({ index }) => index));
    expect([...indices].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
  });

  law('reversed twice is as before', (source) => {
    expect(select(reversed(reversed(source)))).toEqual(select(source));
  });

  law('reversed keeps pixels and mirrors indices', (source) => {
    const { entries, count } = select(source);
    const back = new Map(select(reversed(source)).entries.map(({ pixel, index }) => [pixel, index]));
    expect(back.size).toBe(entries.length);
    for (const { pixel, index } of entries) expect(back.get(pixel)).toBe(count - 1 - index);
  });

  law('every first is everything', (source) => {
    expect(select(stepped(source, 1))).toEqual(select(source));
  });

  law('all offsets of a step together have each pixel once', (source) => {
    const { entries } = select(source);
    const parts = [0, 1, 2].flatMap((offset) => select(stepped(source, 3, offset)).entries);
    expect(parts.map(({ pixel }) => pixel).sort()).toEqual(entries.map(({ pixel }) => pixel).sort());
  });

  test('counts of a union add up, those of twins are the greatest', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 2 }), (a, b) => {
        const parts = [range('hem', 0, a), range('cuff', 0, b)];
        const counts = parts.map((part) => select(part).count);
        expect(select(union(...parts)).count).toBe(counts[0]! + counts[1]!);
        expect(select(twins(...parts)).count).toBe(Math.max(...counts));
      }),
      { seed: 52, numRuns: 50 },
    );
  });
});
