/** Runs wired from their other end, and grids with other columns and rows, over random pieces. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { reverseShape } from '../../engine/edit/geometry/reverse.ts';
import { changeGrid } from '../../engine/edit/offers/grid.ts';
import { reverseRun } from '../../engine/edit/offers/reverse.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import { pixelCount, pixelPlaces } from '../../engine/layout/shapes.ts';
import type { Piece, Shape, ZoneSource } from '../../engine/piece/schema.ts';
import { frozen, generated, sample, sound, textOf } from './pieces.ts';

const seeds = Array.from({ length: 60 }, (_, i) => 20_261_125 + i);
const runsOf = (piece: Piece) => piece.lines.flatMap(({ runs }) => runs);
const shapes = seeds.flatMap((seed) =>
  runsOf(generated(seed)).flatMap(({ flat, worn }) => (worn === undefined ? [flat] : [flat, worn])),
);
const kinds = new Set(shapes.map(({ kind }) => kind));

function expectSamePlaces(shape: Shape, reversed: Shape): void {
  const places = pixelPlaces(shape).reverse();
  for (const [i, { x, y }] of pixelPlaces(reversed).entries()) {
    expect(Math.hypot(x - places[i]!.x, y - places[i]!.y)).toBeLessThan(1e-9);
  }
  expect(pixelCount(reversed)).toBe(places.length);
}

describe('G5 a shape from its other end', () => {
  it.each([...kinds])('%s', (kind) => {
    const some = shapes.filter((shape) => shape.kind === kind);
    for (const shape of some) {
      expectSamePlaces(shape, reverseShape(shape));
      expectSamePlaces(reverseShape(shape), reverseShape(reverseShape(shape)));
    }
  });

  it('stays of its kind, but for a grid that ends above its beginning', () => {
    const grid = {
      kind: 'grid',
      columns: 4,
      start: [0, 0],
      pitchMillimetres: 10,
      directionDegrees: 0,
    } as const;
    const kindOf = (rows: number, order: 'rows' | 'alternating') =>
      reverseShape({ ...grid, start: [0, 0], rows, order }).kind;
    expect([kindOf(3, 'alternating'), kindOf(2, 'rows'), kindOf(2, 'alternating')]).toEqual([
      'grid',
      'grid',
      'points',
    ]);
    for (const shape of shapes) {
      if (shape.kind !== 'grid') expect(reverseShape(shape).kind).toBe(shape.kind);
    }
  });
});

const namesWholeRuns = (source: ZoneSource): boolean => /"kind":"(run|all)"/.test(JSON.stringify(source));
const spotOf = ({ x, y }: { x: number; y: number }) =>
  `${x.toFixed(6)} ${y.toFixed(6)}`.replaceAll('-0.000000', '0.000000');

describe('O15 a run from its other end', () => {
  it('keeps every pixel in its place and its part of the run, and ranges of zones their pixels in order', () => {
    let zones = 0;
    for (const seed of seeds) {
      const piece = frozen(generated(seed));
      for (const { name, flat } of runsOf(piece)) {
        const { piece: after, inverse } = sound(applyEdit(piece, sound(reverseRun(piece, name))));
        expect(textOf(sound(applyEdit(after, inverse)).piece)).toBe(textOf(piece));
        const [before, now] = [sound(prepareLayout(piece)), sound(prepareLayout(after))];
        const index = runsOf(piece).findIndex((run) => run.name === name);
        const inWords = ({ pixels }: typeof now, from: (position: number) => number) =>
          pixels
            .filter(({ run }) => run === index)
            .map((p) => `${from(p.position)} ${p.hidden} ${spotOf(p.flat)} ${spotOf(p.worn)}`);
        const last = pixelCount(flat) - 1;
        expect(inWords(now, (p) => p)).toEqual(inWords(before, (p) => last - p).reverse());
        for (const zone of piece.zones.filter(({ source }) => !namesWholeRuns(source))) {
          const lit = ({ pixels, zones }: typeof now) =>
            zones
              .get(zone.name)!
              .entries.map((entry) => `${entry.index} ${spotOf(pixels[entry.pixel]!.flat)}`);
          expect(lit(now).sort()).toEqual(lit(before).sort());
          zones += 1;
        }
      }
    }
    expect(zones).toBeGreaterThan(10);
  });
});

describe('O16 a grid of other columns and rows', () => {
  const hat = frozen(sample('ferrymans-hat'));
  const badgeOf = (piece: Piece) => runsOf(piece).find(({ name }) => name === 'badge')!;

  it('keeps its pitch, flat and worn, and forgets what lies beyond', () => {
    const dim = {
      ...hat,
      lines: hat.lines.map((line) => ({
        ...line,
        runs: line.runs.map((run) => (run.name === 'badge' ? { ...run, hidden: [2, 20] } : run)),
      })),
    };
    const { piece } = sound(applyEdit(dim, sound(changeGrid(dim, 'badge', 5, 2))));
    const { flat, worn, hidden } = badgeOf(piece);
    expect(flat).toEqual({ ...badgeOf(hat).flat, columns: 5, rows: 2 });
    expect(worn).toEqual({ ...badgeOf(hat).worn, columns: 5, rows: 2 });
    expect(hidden).toEqual([2]);
  });

  it('says why where there is none, or where the worn place cannot follow', () => {
    expect(changeGrid(hat, 'brim', 5, 2).diagnostics.map(({ code }) => code)).toEqual(['run-no-grid']);
    const worn = {
      kind: 'points' as const,
      points: pixelPlaces(badgeOf(hat).flat).map(({ x, y }): [number, number] => [x, y]),
    };
    const { piece } = sound(applyEdit(hat, { kind: 'set-run', run: 'badge', set: { worn } }));
    expect(changeGrid(piece, 'badge', 5, 2).diagnostics.map(({ code }) => code)).toEqual(['grid-worn-apart']);
    expect(changeGrid(piece, 'badge', 8, 3).value).toBeDefined();
  });
});
