/** Paths under the hand: nodes put in, taken out and moved; how many pixels fit. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import {
  countThatFits,
  insertNode,
  lengthOfPath,
  moveControl,
  moveNode,
  type PathShape,
  removeNode,
} from '../../engine/edit/geometry/path.ts';
import { pixelPlaces } from '../../engine/layout/shapes.ts';
import { newPiece } from '../../engine/piece/new-piece.ts';
import { shape as shapeSchema } from '../../engine/piece/schema/shape.ts';
import { sound } from './pieces.ts';

const millimetres = fc.integer({ min: -3000, max: 3000 }).map((tenths) => tenths / 10);
const point = fc.tuple(millimetres, millimetres);
const path: fc.Arbitrary<PathShape> = fc.record({
  kind: fc.constant('path'),
  count: fc.integer({ min: 1, max: 60 }),
  start: point,
  curves: fc.array(fc.record({ firstControl: point, secondControl: point, end: point }), {
    minLength: 1,
    maxLength: 5,
  }),
  pitchMillimetres: fc.integer({ min: 20, max: 600 }).map((tenths) => tenths / 10),
});
const share = fc.integer({ min: 10, max: 90 }).map((percent) => percent / 100);
const runs = { seed: 270_615, numRuns: 200 };

/** A level line of 90 mm, then one upright. */
const hook: PathShape = {
  kind: 'path',
  count: 5,
  start: [0, 0],
  curves: [
    { firstControl: [30, 0], secondControl: [60, 0], end: [90, 0] },
    { firstControl: [90, 30], secondControl: [90, 60], end: [90, 90] },
  ],
  pitchMillimetres: 30,
};

/** The farthest that any pixel of one is from the same pixel of the other. */
function apart(one: PathShape, other: PathShape): number {
  const [a, b] = [pixelPlaces(one), pixelPlaces(other)];
  expect(a).toHaveLength(b.length);
  return Math.max(...a.map(({ x, y }, i) => Math.hypot(x - b[i]!.x, y - b[i]!.y)));
}

describe('G6 a node put in', () => {
  it('leaves every pixel where it is', () => {
    fc.assert(
      fc.property(path, fc.nat(4), share, (before, which, at) => {
        const curve = which % before.curves.length;
        const after = insertNode(before, curve, at);
        expect(after.curves).toHaveLength(before.curves.length + 1);
        expect(apart(before, after)).toBeLessThan(1e-9);
        expect(shapeSchema.parse(after)).toEqual(after);
      }),
      runs,
    );
  });

  it('and taken out again leaves no trace', () => {
    fc.assert(
      fc.property(path, fc.nat(4), share, (before, which, at) => {
        const curve = which % before.curves.length;
        const { firstControl, secondControl } = before.curves[curve]!;
        // Where both control points are one, the node's own lie on it and say nothing of its share.
        fc.pre(Math.hypot(firstControl[0] - secondControl[0], firstControl[1] - secondControl[1]) > 1);
        const there = insertNode(before, curve, at);
        const { end } = there.curves[curve]!;
        fc.pre(
          Math.hypot(
            end[0] - there.curves[curve]!.secondControl[0],
            end[1] - there.curves[curve]!.secondControl[1],
          ) > 1e-3,
        );
        expect(apart(before, removeNode(there, curve + 1))).toBeLessThan(1e-6);
      }),
      runs,
    );
  });

  it('is refused without a curve, and where the file has no room', () => {
    expect(insertNode(hook, 2, 0.5)).toBe(hook);
    const long = { ...hook, curves: Array.from({ length: 256 }, () => hook.curves[0]!) };
    expect(insertNode(long, 0, 0.5)).toBe(long);
  });
});

describe('G6 nodes', () => {
  it('at an end go with their curve, and the last curve stays', () => {
    expect(removeNode(hook, 0)).toMatchObject({ start: [90, 0], curves: [hook.curves[1]] });
    const short = removeNode(hook, 2);
    expect(short.curves).toEqual([hook.curves[0]]);
    expect(removeNode(short, 0)).toBe(short);
    expect(removeNode(hook, 3)).toBe(hook);
  });

  it('take the control points beside them along', () => {
    expect(moveNode(hook, 1, [100, 5])).toEqual({
      ...hook,
      curves: [
        { firstControl: [30, 0], secondControl: [70, 5], end: [100, 5] },
        { firstControl: [100, 35], secondControl: [90, 60], end: [90, 90] },
      ],
    });
    expect(moveNode(hook, 0, [-10, 0])).toEqual({
      ...hook,
      start: [-10, 0],
      curves: [{ ...hook.curves[0]!, firstControl: [20, 0] }, hook.curves[1]],
    });
    expect(moveNode(hook, 2, [90, 99]).curves[1]).toEqual({
      firstControl: [90, 30],
      secondControl: [90, 69],
      end: [90, 99],
    });
    expect(moveNode(hook, 3, [0, 0])).toBe(hook);
  });

  it('stay where they are while a control point moves', () => {
    expect(moveControl(hook, 1, 'firstControl', [120, 0]).curves).toEqual([
      hook.curves[0],
      { ...hook.curves[1]!, firstControl: [120, 0] },
    ]);
  });
});

describe('G4 pixels of a path', () => {
  it('fit as often as its length has room for the pitch', () => {
    expect(lengthOfPath(hook)).toBeCloseTo(180, 9);
    expect(countThatFits(hook)).toBe(7);
    expect(countThatFits({ ...hook, pitchMillimetres: 1000 / 60 })).toBe(11);
    expect(countThatFits({ ...hook, pitchMillimetres: 181 })).toBe(1);
    expect(countThatFits({ ...hook, pitchMillimetres: 0.01 })).toBe(2000);
  });

  it('that fit end before the end of the path, and one more would not', () => {
    fc.assert(
      fc.property(path, (any) => {
        const count = countThatFits(any);
        const length = lengthOfPath(any);
        expect((count - 1) * any.pitchMillimetres).toBeLessThanOrEqual(length + 1e-6);
        expect(count * any.pitchMillimetres).toBeGreaterThan(length - 1e-6);
      }),
      runs,
    );
  });
});

it('a path is drawn, changed and taken back as any run', () => {
  const piece = newPiece({
    name: 'Heron',
    board: 'host',
    part: 'ws2812b',
    limitMilliamps: 400,
    firstRun: { name: 'neck', shape: hook },
  });
  const flat = moveNode(hook, 1, [70, 20]);
  const { piece: bent, inverse } = sound(applyEdit(piece, { kind: 'set-run', run: 'neck', set: { flat } }));
  expect(bent.lines[0]!.runs[0]!.flat).toEqual(flat);
  expect(sound(applyEdit(bent, inverse)).piece).toEqual(piece);
});
