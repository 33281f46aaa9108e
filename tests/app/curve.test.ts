/** Curves as a hand works on them: L20, L21 of app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineAsCubic, nearestParameter, quadraticAsCubic } from '../../app/web/place/curve/cubic.ts';
import {
  cornerNode,
  isClosed,
  isSmooth,
  type Line,
  lineThrough,
  moveHandle,
  moveNode,
  nearestOn,
  nodesOf,
  removeNode,
  smoothNode,
} from '../../app/web/place/curve/nodes.ts';
import { refitted, stripAlong } from '../../app/web/place/curve/path-shape.ts';
import { insertNode } from '../../engine/edit/geometry/path.ts';
import { distance, type Place, pointOnCubic } from '../../engine/layout/cubic.ts';
import { cubicsOf, lengthOfPath, type PathShape } from '../../engine/layout/path.ts';
import { pixelPlaces } from '../../engine/layout/shapes.ts';

const seed = 20261125;
const millimetres = fc.double({ min: -500, max: 500, noNaN: true });
const spot: fc.Arbitrary<Place> = fc.tuple(millimetres, millimetres);
const cubic = fc.record({ start: spot, firstControl: spot, secondControl: spot, end: spot });
const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
/** Three to eight different spots of a coarse grid, so that none are almost the same. */
const spots: fc.Arbitrary<Place[]> = fc.uniqueArray(
  fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 })),
  { minLength: 3, maxLength: 8, selector: String },
);

const near = (a: Place, b: Place, within = 1e-6) => expect(distance(a, b)).toBeLessThan(within);
const path = (line: Line): PathShape => ({ kind: 'path', count: 5, pitchMillimetres: 10, ...line });

const square: Place[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];
const bow = path(
  lineThrough(
    [
      [0, 0],
      [50, 40],
      [100, 0],
    ],
    false,
  ),
);

describe('curves', () => {
  test('L20 a line and a quadratic curve keep each of their points as cubic ones', () => {
    fc.assert(
      fc.property(spot, spot, spot, share, (a, b, c, t) => {
        near(pointOnCubic(lineAsCubic(a, b), t), [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
        const u = 1 - t;
        const along = (i: 0 | 1) => u * u * a[i] + 2 * u * t * b[i] + t * t * c[i];
        near(pointOnCubic(quadraticAsCubic(a, b, c), t), [along(0), along(1)]);
      }),
      { seed },
    );
  });

  test('L20 no point of a fine ladder lies nearer than the nearest point', () => {
    fc.assert(
      fc.property(cubic, spot, (curve, from) => {
        const found = distance(pointOnCubic(curve, nearestParameter(curve, from)), from);
        for (let i = 0; i <= 400; i++) {
          expect(found).toBeLessThan(distance(pointOnCubic(curve, i / 400), from) + 0.5);
        }
      }),
      { seed, numRuns: 60 },
    );
  });
});

describe('nodes', () => {
  test('L21 a node takes its handles along, and a smooth one stays smooth when a handle is pulled', () => {
    const [, before] = nodesOf(bow);
    const [, moved] = nodesOf(moveNode(bow, 1, [60, 50]));
    near(moved!.ahead, [before!.ahead[0] + 10, before!.ahead[1] + 10]);
    expect(isSmooth(before!)).toBe(true);
    const [, pulled] = nodesOf(moveHandle(bow, 1, 'ahead', [50, 90]));
    expect(isSmooth(pulled!)).toBe(true);
    near(pulled!.back, [50, 40 - distance(before!.at, before!.back)]);
  });

  test('L21 at a corner each handle goes its own way', () => {
    const corner = cornerNode(bow, 1);
    const [, node] = nodesOf(corner);
    expect(isSmooth(node!)).toBe(false);
    const [, bent] = nodesOf(moveHandle(corner, 1, 'ahead', [50, 90]));
    expect(bent!.back).toEqual(node!.back);
    expect(isSmooth(nodesOf(smoothNode(corner, 1))[1]!)).toBe(true);
  });

  test('L21 a curve goes through every spot that was set, and is smooth there', () => {
    fc.assert(
      fc.property(spots, fc.boolean(), (set, closed) => {
        const line = lineThrough(set, closed);
        expect(isClosed(line)).toBe(closed);
        const nodes = nodesOf(line);
        expect(nodes.map(({ at }) => at)).toEqual(set);
        for (const [i, node] of nodes.entries()) {
          const isEnd = !closed && (i === 0 || i === set.length - 1);
          if (!isEnd) expect(isSmooth(node)).toBe(true);
        }
      }),
      { seed },
    );
  });

  test('L21 a closed curve stays closed, whatever node is moved, pulled or taken out', () => {
    fc.assert(
      fc.property(spots, fc.nat(), spot, (set, pick, to) => {
        const round = path(lineThrough(set, true));
        const node = pick % set.length;
        expect(isClosed(moveNode(round, node, to))).toBe(true);
        near(nodesOf(moveNode(round, node, to))[node]!.at, to);
        near(nodesOf(moveHandle(round, node, 'back', to))[node]!.back, to);
        const fewer = removeNode(round, node);
        expect(isClosed(fewer)).toBe(true);
        const left = nodesOf(fewer).map(({ at }) => String(at));
        expect(left.sort()).toEqual(
          set
            .filter((_, i) => i !== node)
            .map(String)
            .sort(),
        );
      }),
      { seed },
    );
  });

  test('L21 a node that is added keeps the way, and taking it out again gives the curve before', () => {
    fc.assert(
      fc.property(spots, fc.boolean(), fc.nat(), share, (set, closed, pick, at) => {
        const before = path(lineThrough(set, closed));
        const curve = pick % before.curves.length;
        const more = insertNode(before, curve, at);
        expect(lengthOfPath(more)).toBeCloseTo(lengthOfPath(before), 6);
        const added = nodesOf(more)[curve + 1]!;
        // Handles of no length tell nothing of shares, and far shares are held back.
        fc.pre(
          at > 0.15 && at < 0.85 && distance(added.at, added.back) + distance(added.at, added.ahead) > 1e-3,
        );
        const again = removeNode(more, curve + 1);
        for (const [i, node] of nodesOf(before).entries()) {
          near(nodesOf(again)[i]!.ahead, node.ahead, 1e-5);
          near(nodesOf(again)[i]!.back, node.back, 1e-5);
        }
      }),
      { seed },
    );
  });

  test('L21 an end takes its curve along; two nodes stay at least', () => {
    const shorter = removeNode(bow, 2);
    expect(nodesOf(shorter).map(({ at }) => at)).toEqual([
      [0, 0],
      [50, 40],
    ]);
    expect(removeNode(shorter, 0)).toBe(shorter);
    const round = path(lineThrough(square.slice(0, 2), true));
    expect(removeNode(round, 1)).toBe(round);
  });

  test('L21 the nearest footing is on the curve that passes there', () => {
    const { curve, at, millimetresAway } = nearestOn(lineThrough(square, true), [50, 130]);
    expect(curve).toBe(2);
    expect(at).toBeCloseTo(0.5, 3);
    expect(millimetresAway).toBeLessThan(20);
  });
});

describe('strips along lines', () => {
  const straight = lineThrough(
    [
      [0, 0],
      [100, 0],
    ],
    false,
  );

  test('L21 a strip has as many pixels as fit, and follows when the line is drawn longer', () => {
    const strip = stripAlong(straight, 1000 / 60);
    expect(strip.count).toBe(6 + 1 - 0);
    expect(refitted(moveNode(strip, 1, [50, 0])).count).toBe(3 + 1);
    expect(stripAlong(straight, 300).count).toBe(1);
  });

  test('L21 on a closed line the last pixel keeps its distance from the first', () => {
    fc.assert(
      fc.property(spots, fc.double({ min: 1, max: 12, noNaN: true }), (set, pitch) => {
        const line = lineThrough(
          set.map(([x, y]) => [x * 10, y * 10] as Place),
          true,
        );
        const strip = stripAlong(line, pitch);
        const rest = lengthOfPath(strip) - (strip.count - 1) * pitch;
        if (strip.count > 1) expect(rest).toBeGreaterThan(pitch * 0.999);
        expect(rest).toBeLessThan(2 * pitch + 1e-6);
        expect(pixelPlaces(strip)).toHaveLength(strip.count);
      }),
      { seed, numRuns: 40 },
    );
  });

  test('L21 every curve of a line is one of its strip', () => {
    const line = lineThrough(square, true);
    expect(cubicsOf(stripAlong(line, 10))).toHaveLength(4);
  });
});
