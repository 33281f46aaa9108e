/** Curves as a hand works on them: L20, L21 of app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cut,
  distance,
  lineAsCubic,
  nearestShare,
  pointOn,
  quadraticAsCubic,
  type Spot,
} from '../../app/web/place/curve/cubic.ts';
import {
  addNode,
  type Curve,
  cornerNode,
  curveThrough,
  isSmooth,
  moveHandle,
  moveNode,
  nearestOn,
  piecesOf,
  removeNode,
  smoothNode,
} from '../../app/web/place/curve/nodes.ts';

const seed = 20261125;
const millimetres = fc.double({ min: -500, max: 500, noNaN: true });
const spot: fc.Arbitrary<Spot> = fc.tuple(millimetres, millimetres);
const cubic = fc.record({ start: spot, first: spot, second: spot, end: spot });
const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const curve: fc.Arbitrary<Curve> = fc.record({
  nodes: fc.array(fc.record({ at: spot, back: spot, ahead: spot }), { minLength: 3, maxLength: 6 }),
  closed: fc.boolean(),
});

const near = (a: Spot, b: Spot, within = 1e-6) => expect(distance(a, b)).toBeLessThan(within);

/** By Bernstein's polynomials, which the code does not use. */
function bernstein([a, b, c, d]: readonly Spot[], t: number): Spot {
  const u = 1 - t;
  const along = (i: 0 | 1) => u ** 3 * a![i] + 3 * u * u * t * b![i] + 3 * u * t * t * c![i] + t ** 3 * d![i];
  return [along(0), along(1)];
}

function samples(of: Curve): Spot[] {
  return piecesOf(of).flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map((at) => pointOn(piece, at)));
}

describe('pieces', () => {
  test('L20 a point of a piece is where Bernstein has it, and both halves of a cut lie on the piece', () => {
    fc.assert(
      fc.property(cubic, share, share, (piece, at, part) => {
        const { start, first, second, end } = piece;
        near(pointOn(piece, at), bernstein([start, first, second, end], at));
        const [before, after] = cut(piece, at);
        near(pointOn(before, part), pointOn(piece, at * part));
        near(pointOn(after, part), pointOn(piece, at + (1 - at) * part));
      }),
      { seed },
    );
  });

  test('L20 a line and a quadratic curve keep each of their points as cubic pieces', () => {
    fc.assert(
      fc.property(spot, spot, spot, share, (a, b, c, t) => {
        near(pointOn(lineAsCubic(a, b), t), [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
        const u = 1 - t;
        const along = (i: 0 | 1) => u * u * a[i] + 2 * u * t * b[i] + t * t * c[i];
        near(pointOn(quadraticAsCubic(a, b, c), t), [along(0), along(1)]);
      }),
      { seed },
    );
  });

  test('L20 no point of a fine ladder lies nearer than the nearest point', () => {
    fc.assert(
      fc.property(cubic, spot, (piece, from) => {
        const found = distance(pointOn(piece, nearestShare(piece, from)), from);
        for (let i = 0; i <= 400; i++) {
          expect(found).toBeLessThan(distance(pointOn(piece, i / 400), from) + 0.5);
        }
      }),
      { seed, numRuns: 60 },
    );
  });
});

describe('nodes', () => {
  test('L21 a node that is added keeps the curve, and taking it out again gives the curve before', () => {
    fc.assert(
      fc.property(curve, fc.nat(), fc.double({ min: 0.15, max: 0.85, noNaN: true }), (before, pick, at) => {
        const pieces = piecesOf(before);
        const piece = pick % pieces.length;
        const { start, first, second, end } = pieces[piece]!;
        const more = addNode(before, piece, at);
        expect(more.nodes).toHaveLength(before.nodes.length + 1);
        near(more.nodes[piece + 1]!.at, pointOn(pieces[piece]!, at));
        near(pointOn(piecesOf(more)[piece]!, 0.4), pointOn(pieces[piece]!, 0.4 * at));
        near(pointOn(piecesOf(more)[piece + 1]!, 0.4), pointOn(pieces[piece]!, at + 0.4 * (1 - at)));
        // Where the new node has no handles to go by, shares cannot be told from it.
        const added = more.nodes[piece + 1]!;
        fc.pre(distance(added.at, added.back) + distance(added.at, added.ahead) > 1);
        fc.pre(distance(start, first) + distance(second, end) > 1);
        const again = samples(removeNode(more, piece + 1));
        for (const [i, point] of samples(before).entries()) near(point, again[i]!, 1e-3);
      }),
      { seed },
    );
  });

  test('L21 a node takes its handles along, and a smooth one stays smooth when a handle is pulled', () => {
    const bow = curveThrough(
      [
        [0, 0],
        [50, 40],
        [100, 0],
      ],
      false,
    );
    const moved = moveNode(bow, 1, [60, 50]);
    near(moved.nodes[1]!.ahead, [bow.nodes[1]!.ahead[0] + 10, bow.nodes[1]!.ahead[1] + 10]);
    expect(isSmooth(bow.nodes[1]!)).toBe(true);
    const reach = distance(bow.nodes[1]!.at, bow.nodes[1]!.back);
    const pulled = moveHandle(bow, 1, 'ahead', [50, 90]).nodes[1]!;
    expect(isSmooth(pulled)).toBe(true);
    near(pulled.back, [50, 40 - reach]);
    const corner = cornerNode(bow, 1);
    expect(isSmooth(corner.nodes[1]!)).toBe(false);
    const bent = moveHandle(corner, 1, 'ahead', [50, 90]).nodes[1]!;
    expect(bent.back).toEqual(corner.nodes[1]!.back);
    expect(isSmooth(smoothNode(corner, 1).nodes[1]!)).toBe(true);
  });

  test('L21 a curve goes through every spot that was set, and is smooth there', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 })), {
          minLength: 3,
          maxLength: 8,
          selector: String,
        }),
        fc.boolean(),
        (spots, closed) => {
          const drawn = curveThrough(spots, closed);
          expect(drawn.nodes.map(({ at }) => at)).toEqual(spots);
          for (const [i, node] of drawn.nodes.entries()) {
            const isEnd = !closed && (i === 0 || i === spots.length - 1);
            const returns = distance(spots.at(i - 1)!, spots[(i + 1) % spots.length]!) === 0;
            if (!isEnd && !returns) expect(isSmooth(node)).toBe(true);
          }
        },
      ),
      { seed },
    );
  });

  test('L21 a curve keeps two nodes at least; an end takes its piece along', () => {
    const line = curveThrough(
      [
        [0, 0],
        [10, 0],
        [20, 5],
      ],
      false,
    );
    const shorter = removeNode(line, 2);
    expect(shorter.nodes.map(({ at }) => at)).toEqual([
      [0, 0],
      [10, 0],
    ]);
    expect(shorter.nodes[1]!.ahead).toEqual([10, 0]);
    expect(removeNode(shorter, 0)).toBe(shorter);
  });

  test('L21 the nearest footing is on the piece that passes there', () => {
    const square = curveThrough(
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
      true,
    );
    const { piece, share: at, millimetresAway } = nearestOn(square, [50, 130]);
    expect(piece).toBe(2);
    expect(at).toBeCloseTo(0.5, 3);
    expect(millimetresAway).toBeLessThan(20);
  });
});
