/** Zones, single pixels and the picture underneath: L23 to L26 of app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Placing, scaledBy, toPicture, toTable } from '../../app/web/place/garment/placing.ts';
import { addressIn, setStates, statesOf, tapped } from '../../app/web/place/pixels/states.ts';
import { caughtBy, goesAround, thinned } from '../../app/web/place/zones/lasso.ts';
import { carried, recipeOf, sourceOf } from '../../app/web/place/zones/recipe.ts';
import { routeOf } from '../../app/web/place/zones/route.ts';
import { ordinal, sourceWords } from '../../app/web/place/zones/source-words.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Layout, Point } from '../../engine/layout/layout.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import type { Piece, ZoneSource } from '../../engine/piece/schema.ts';
import { samplePiece } from './browser/samples.ts';

const seed = 20261125;
const parasol = samplePiece('jellyfish-parasol');
const square: Point[] = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];

function layoutOf(piece: Piece): Layout {
  const { value, diagnostics } = prepareLayout(piece);
  expect(diagnostics).toEqual([]);
  return value!;
}

function withZone(source: ZoneSource): Piece {
  return { ...parasol, zones: [...parasol.zones, { name: 'tried', source }] };
}

describe('lasso', () => {
  test('L23 it holds what it goes around, whichever way round it was drawn', () => {
    for (const line of [square, [...square].reverse()]) {
      expect(goesAround(line, { x: 5, y: 5 })).toBe(true);
      expect(goesAround(line, { x: 11, y: 5 })).toBe(false);
    }
    expect(
      caughtBy(square, [
        { x: 1, y: 1 },
        { x: -1, y: 1 },
        { x: 9, y: 9 },
      ]),
    ).toEqual([0, 2]);
    expect(caughtBy(square.slice(0, 2), [{ x: 5, y: 0 }])).toEqual([]);
  });

  test('L23 a point is inside just when the angles under which it sees the line add up to turns', () => {
    const place = fc.record({ x: fc.integer({ min: -30, max: 30 }), y: fc.integer({ min: -30, max: 30 }) });
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 9 }), place, (line, at) => {
        // Off the whole-number grid, so that no point lies on the line by chance of rounding.
        const from = { x: at.x + 0.123, y: at.y + 0.457 };
        const angles = line.map((a, i) => {
          const b = line[(i + 1) % line.length]!;
          const turn = Math.atan2(b.y - from.y, b.x - from.x) - Math.atan2(a.y - from.y, a.x - from.x);
          return Math.atan2(Math.sin(turn), Math.cos(turn));
        });
        const turns = angles.reduce((sum, angle) => sum + angle, 0) / (2 * Math.PI);
        expect(goesAround(line, from)).toBe(Math.abs(turns) > 0.5);
      }),
      { seed },
    );
  });

  test('L23 a drawn line loses points that lie closer than a step', () => {
    const line = Array.from({ length: 101 }, (_, i) => ({ x: i / 10, y: 0 }));
    expect(thinned(line, 2).map(({ x }) => x)).toEqual([0, 2, 4, 6, 8, 10]);
  });
});

const leaf: fc.Arbitrary<ZoneSource> = fc.constantFrom(
  { kind: 'all' },
  { kind: 'run', run: 'a' },
  { kind: 'range', run: 'b', first: 7, last: 2 },
);
const { source } = fc.letrec<{ source: ZoneSource }>((tie) => ({
  source: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaf,
    tie('source').map((of): ZoneSource => ({ kind: 'reversed', of })),
    fc
      .tuple(tie('source'), fc.integer({ min: 1, max: 5 }), fc.nat(5))
      .filter(([, every, offset]) => every > 1 || offset > 0)
      .map(([of, every, offset]): ZoneSource => ({ kind: 'stepped', of, every, offset })),
    fc.array(tie('source'), { minLength: 2, maxLength: 3 }).map((of): ZoneSource => ({ kind: 'union', of })),
    fc.array(tie('source'), { minLength: 2, maxLength: 3 }).map((of): ZoneSource => ({ kind: 'twins', of })),
  ),
}));

describe('recipes', () => {
  test('L24 every source is read as a recipe that gives it back', () => {
    fc.assert(
      fc.property(source, (wanted) => {
        const recipe = recipeOf(wanted);
        expect(recipe.parts.length).toBeGreaterThan(0);
        expect(sourceOf(recipe)).toEqual(wanted);
        expect(sourceWords(wanted).length).toBeGreaterThan(0);
      }),
      { seed },
    );
  });

  test('L24 zones are told in plain words', () => {
    const left: ZoneSource = { kind: 'range', run: 'brim', first: 0, last: 7 };
    const right: ZoneSource = { kind: 'range', run: 'brim', first: 15, last: 8 };
    expect(sourceWords({ kind: 'twins', of: [left, right] })).toBe('brim 0 to 7 beside brim 15 to 8');
    expect(
      sourceWords({ kind: 'reversed', of: { kind: 'stepped', of: { kind: 'all' }, every: 3, offset: 1 } }),
    ).toBe('every 3rd of all pixels, from 1 on, backwards');
    const many = Array.from({ length: 9 }, (_, i): ZoneSource => ({ kind: 'run', run: `strip ${i}` }));
    expect(sourceWords({ kind: 'union', of: many })).toBe('strip 0, then strip 1, then strip 2 and 6 more');
    expect([1, 2, 3, 4, 11, 12, 13, 21, 112].map(ordinal).join(' ')).toBe(
      '1st 2nd 3rd 4th 11th 12th 13th 21st 112th',
    );
  });

  test('L24 a part is carried to another place', () => {
    expect(carried(['a', 'b', 'c'], 0, 2)).toEqual(['b', 'c', 'a']);
    expect(carried(['a', 'b', 'c'], 2, 0)).toEqual(['c', 'a', 'b']);
  });
});

describe('the way light runs', () => {
  test('L25 it goes from index to index; a jump is told from a step', () => {
    const run = parasol.lines[0]!.runs[0]!.name;
    const of: ZoneSource[] = [
      { kind: 'range', run, first: 0, last: 3 },
      { kind: 'range', run, first: 20, last: 23 },
    ];
    const layout = layoutOf(withZone({ kind: 'union', of }));
    const route = routeOf(layout.zones.get('tried')!, layout, 'flat');
    expect(route.first).toEqual([layout.pixels[0]!.flat]);
    expect(route.last).toEqual([layout.pixels[23]!.flat]);
    expect(route.lanes.map(({ jumps }) => jumps)).toEqual([[false, false, false, true, false, false, false]]);
  });

  test('L25 twins run side by side', () => {
    const [a, b] = parasol.lines[0]!.runs.slice(1, 3).map(({ name }) => name);
    const of: ZoneSource[] = [
      { kind: 'run', run: a! },
      { kind: 'run', run: b! },
    ];
    const layout = layoutOf(withZone({ kind: 'twins', of }));
    const route = routeOf(layout.zones.get('tried')!, layout, 'flat');
    expect(route.first).toHaveLength(2);
    expect(route.lanes.map(({ places }) => places.length)).toEqual(
      [a, b].map((name) => layout.zones.get(name!)!.count),
    );
    expect(route.lanes.every(({ jumps }) => !jumps.includes(true))).toBe(true);
  });
});

describe('single pixels', () => {
  const run = { ...parasol.lines[0]!.runs[0]!, removed: [3], hidden: [5] };

  test('L26 a pixel is lit, hidden or removed, never two at once', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.nat(12), { maxLength: 6 }),
        fc.constantFrom('lit', 'hidden', 'removed'),
        (positions, state) => {
          const edit = setStates(run, positions, state);
          const piece = structuredClone(parasol);
          piece.lines[0]!.runs[0] = structuredClone(run);
          const { value } = applyEdit(piece, edit);
          const after = statesOf(value!.piece.lines[0]!.runs[0]!);
          for (const [position, before] of statesOf(run).entries()) {
            expect(after[position]).toBe(positions.includes(position) ? state : before);
          }
        },
      ),
      { seed },
    );
  });

  test('L26 what is tapped once more is lit again', () => {
    expect(tapped('lit', 'removed')).toBe('removed');
    expect(tapped('removed', 'removed')).toBe('lit');
    expect(tapped('hidden', 'removed')).toBe('removed');
  });

  test('L26 behind a removed pixel addresses move up by one, behind a hidden one they do not', () => {
    const states = statesOf(run);
    expect([2, 3, 4, 5, 6].map((position) => addressIn(states, position))).toEqual([2, undefined, 3, 4, 5]);
  });
});

describe('the picture underneath', () => {
  const size = { width: 800, height: 600 };
  const within = (bound: number) => fc.double({ min: -bound, max: bound, noNaN: true });
  const placing: fc.Arbitrary<Placing> = fc.record({
    middle: fc.tuple(within(500), within(500)),
    millimetresPerPixel: fc.double({ min: 0.05, max: 5, noNaN: true }),
    degrees: within(360),
    opacity: fc.constant(0.5),
  });
  const spot = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }));

  test('L27 a spot of the picture and its place on the table lead to each other', () => {
    fc.assert(
      fc.property(placing, spot, (laid, at) => {
        const back = toPicture(laid, size, toTable(laid, size, at));
        expect(Math.hypot(back[0] - at[0], back[1] - at[1])).toBeLessThan(1e-6);
      }),
      { seed },
    );
  });

  test('L27 a known length has that length on the table afterwards, and its middle stays', () => {
    fc.assert(
      fc.property(placing, spot, spot, fc.integer({ min: 20, max: 2000 }), (laid, from, to, millimetres) => {
        fc.pre(Math.hypot(to[0] - from[0], to[1] - from[1]) > 5);
        const grown = scaledBy(laid, size, { from, to, millimetres })!;
        const [a, b] = [toTable(grown, size, from), toTable(grown, size, to)];
        expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(millimetres, 6);
        const [c, d] = [toTable(laid, size, from), toTable(laid, size, to)];
        expect(a[0] + b[0]).toBeCloseTo(c[0] + d[0], 6);
        expect(a[1] + b[1]).toBeCloseTo(c[1] + d[1], 6);
      }),
      { seed },
    );
  });

  test('L27 a line without length scales nothing', () => {
    const laid: Placing = { middle: [0, 0], millimetresPerPixel: 1, degrees: 0, opacity: 1 };
    expect(scaledBy(laid, size, { from: [5, 5], to: [5, 5], millimetres: 100 })).toBeUndefined();
    expect(scaledBy(laid, size, { from: [0, 0], to: [5, 5], millimetres: 0 })).toBeUndefined();
  });
});
