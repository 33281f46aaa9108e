/** Whole layouts: addresses, hidden and removed pixels, worn places in the zone's own measure. */
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../engine/layout/layout.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';

type RunInput = PieceInput['lines'][number]['runs'][number];

function layoutOf(runs: RunInput[], zones: PieceInput['zones'] = []): Layout {
  const { value, diagnostics } = prepareLayout(
    pieceWith({ lines: [{ pin: 6, part: 'ws2812b', runs }], zones }),
  );
  expect(diagnostics).toEqual([]);
  return value!;
}

const straight = (count: number, start: [number, number] = [0, 0]): RunInput['flat'] => ({
  kind: 'straight',
  count,
  start,
  pitchMillimetres: 10,
});

describe('addresses', () => {
  const layout = layoutOf([
    { name: 'hem', flat: straight(5), removed: [1], hidden: [3] },
    { name: 'cuff', flat: straight(2, [100, 0]) },
  ]);

  test('follow the wire; what is cut out has none, what is hidden has one', () => {
    expect(layout.pixels.map(({ run, position, hidden }) => [run, position, hidden])).toEqual([
      [0, 0, false],
      [0, 2, false],
      [0, 3, true],
      [0, 4, false],
      [1, 0, false],
      [1, 1, false],
    ]);
  });

  test('keep the places of their positions, not of their addresses', () => {
    expect(layout.pixels.map(({ flat }) => flat.x)).toEqual([0, 20, 30, 40, 100, 110]);
  });

  test('zones: everything first, then the runs, then the own ones', () => {
    expect([...layout.zones.keys()]).toEqual(['all', 'hem', 'cuff']);
    expect(layout.zones.get('all')).toMatchObject({ count: 5 });
    expect(layout.zones.get('hem')!.entries).toEqual([
      { pixel: 0, index: 0 },
      { pixel: 1, index: 1 },
      { pixel: 3, index: 2 },
    ]);
    expect(layout.zones.get('cuff')!.entries.map(({ pixel }) => pixel)).toEqual([4, 5]);
  });
});

test('the worn place is the flat one where none is given', () => {
  const worn: RunInput['flat'] = {
    kind: 'points',
    points: [
      [7, 8],
      [9, 10],
    ],
  };
  const layout = layoutOf([
    { name: 'a', flat: straight(2), worn },
    { name: 'b', flat: straight(2) },
  ]);
  expect(layout.pixels.map((pixel) => [pixel.worn.x, pixel.worn.y])).toEqual([
    [7, 8],
    [9, 10],
    [0, 0],
    [10, 0],
  ]);
  expect(layout.pixels[0]!.flat).toEqual({ x: 0, y: 0 });
});

describe('places in a zone, Q2.14', () => {
  const placesOf = (points: [number, number][]) => [
    ...layoutOf([{ name: 'a', flat: { kind: 'points', points } }]).zones.get('a')!.places,
  ];

  test('the longer side spans -1 to 1, the shorter one less, y up', () => {
    // A box of 200 by 100 about (300, 50): halves 100 and 50, so y reaches half of 16384.
    expect(
      placesOf([
        [200, 0],
        [400, 0],
        [400, 100],
        [300, 50],
      ]),
    ).toEqual([-16384, -8192, 16384, -8192, 16384, 8192, 0, 0]);
  });

  test('are rounded, halves up', () => {
    // A third of 16384 is 5461.33; 16384.5 / 32768 of the way is exactly half a step.
    expect(
      placesOf([
        [-3, 0],
        [3, 0],
        [1, 0],
        [-1, 0],
      ]),
    ).toEqual([-16384, 0, 16384, 0, 5461, 0, -5461, 0]);
    expect(
      placesOf([
        [-32768, 0],
        [32768, 0],
        [1, 0],
        [-1, 0],
      ]).slice(4),
    ).toEqual([1, 0, 0, 0]);
  });

  test('are all 0 where the box is a point', () => {
    expect(placesOf([[70, -20]])).toEqual([0, 0]);
    expect(
      placesOf([
        [70, -20],
        [70, -20],
      ]),
    ).toEqual([0, 0, 0, 0]);
  });

  test('a line has only one side', () => {
    expect(
      placesOf([
        [0, 10],
        [0, 30],
      ]),
    ).toEqual([0, -16384, 0, 16384]);
  });

  test('count from the zone, not from the piece', () => {
    const layout = layoutOf(
      [{ name: 'a', flat: straight(9) }],
      [{ name: 'end', source: { kind: 'range', run: 'a', first: 8, last: 6 } }],
    );
    expect([...layout.zones.get('end')!.places]).toEqual([16384, 0, 0, 0, -16384, 0]);
  });

  test('stay inside of -1 to 1 on the flat ring and on the slanted one', () => {
    for (const flattening of [1, 0.3]) {
      const ring: RunInput['flat'] = {
        kind: 'ring',
        count: 64,
        centre: [12, 9],
        diameterMillimetres: 333,
        flattening,
      };
      const places = [...layoutOf([{ name: 'a', flat: ring }]).zones.get('a')!.places];
      expect(Math.max(...places)).toBe(16384);
      expect(Math.min(...places)).toBe(-16384);
      const heights = places.filter((_, i) => i % 2 === 1);
      expect(Math.max(...heights)).toBe(Math.round(16384 * flattening));
    }
  });
});

describe('refuses', () => {
  const refused = (zones: PieceInput['zones'], hidden: number[] = []) =>
    prepareLayout(
      pieceWith({
        lines: [{ pin: 6, part: 'ws2812b', runs: [{ name: 'a', flat: straight(4), hidden }] }],
        zones,
      }),
    );

  test('zones without pixels, all of them at once', () => {
    const { value, diagnostics } = refused(
      [
        { name: 'dark', source: { kind: 'range', run: 'a', first: 1, last: 2 } },
        { name: 'beyond', source: { kind: 'stepped', of: { kind: 'all' }, every: 2, offset: 9 } },
      ],
      [1, 2],
    );
    expect(value).toBeUndefined();
    expect(diagnostics.map(({ code, path }) => [code, path])).toEqual([
      ['zone-empty', 'zones[0]'],
      ['zone-empty', 'zones[1]'],
    ]);
  });

  test('a pixel twice', () => {
    const { diagnostics } = refused([
      { name: 'z', source: { kind: 'twins', of: [{ kind: 'run', run: 'a' }, { kind: 'all' }] } },
    ]);
    expect(diagnostics).toMatchObject([{ code: 'zone-pixel-twice', path: 'zones[0].source' }]);
  });
});

test('the largest piece with the most wasteful zones is laid out in time', () => {
  const waste = {
    kind: 'union' as const,
    of: Array.from({ length: 200 }, () => ({
      kind: 'stepped' as const,
      of: { kind: 'reversed' as const, of: { kind: 'all' as const } },
      every: 1,
      offset: 2000,
    })),
  };
  const one = { kind: 'union' as const, of: [{ kind: 'all' as const }, waste] };
  const zones = Array.from({ length: 100 }, (_, i) => ({ name: `z${i}`, source: one }));
  const start = performance.now();
  const layout = layoutOf([{ name: 'a', flat: straight(2000) }], zones);
  expect(performance.now() - start).toBeLessThan(1000);
  expect(layout.zones.get('z0')!.count).toBe(2000);
});
