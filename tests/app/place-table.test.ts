/** The tables of the Place bench without a page: camera, snapping, grips, what is laid down. Rules: app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gripsOf } from '../../app/web/place/handles/grips.ts';
import { layInRoom } from '../../app/web/place/lay/add.ts';
import { densities, densityOf, pitchAt } from '../../app/web/place/lay/densities.ts';
import { onePixelMore } from '../../app/web/place/lay/dots.ts';
import { laidKinds, layKinds } from '../../app/web/place/lay/kinds.ts';
import { runsTouching } from '../../app/web/place/move/marquee.ts';
import { anchorsOf, snapMove } from '../../app/web/place/move/snapping.ts';
import { boxAround, boxBetween, holds, widened } from '../../app/web/place/surface/box.ts';
import {
  type Camera,
  fitted,
  pushed,
  roundLength,
  seenBox,
  toTable,
  toView,
  zoomed,
} from '../../app/web/place/surface/camera.ts';
import { labelsApart } from '../../app/web/place/surface/labels.ts';
import { arrowsAlong, jumpsBetween, wiredPlaces } from '../../app/web/place/surface/line-path.ts';
import { addressesOf, placesOf, runsOf } from '../../app/web/place/surface/places.ts';
import { indexAt } from '../../app/web/place/tag/order.ts';
import { fieldsOf } from '../../app/web/place/tag/shape-fields.ts';
import { isUnlit } from '../../app/web/place/tag/unlit.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { pitchOf } from '../../engine/edit/geometry/pitch.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import { pixelCount } from '../../engine/layout/shapes.ts';
import { shape as shapeSchema } from '../../engine/piece/schema/shape.ts';
import type { Piece, Shape } from '../../engine/piece/schema.ts';
import { samplePiece } from './browser/samples.ts';

const seed = 20_261_125;
const parasol = samplePiece('jellyfish-parasol');
const wings = samplePiece('moth-wings');
const hat = samplePiece('ferrymans-hat');

const millimetres = fc.double({ min: -3000, max: 3000, noNaN: true });
const point = fc.record({ x: millimetres, y: millimetres });
const size = fc.record({
  width: fc.integer({ min: 40, max: 2000 }),
  height: fc.integer({ min: 40, max: 2000 }),
});
const camera: fc.Arbitrary<Camera> = fc.record({
  middle: point,
  millimetresPerPixel: fc.double({ min: 0.05, max: 50, noNaN: true }),
});
const inView = fc.record({
  x: fc.double({ min: 0, max: 2000, noNaN: true }),
  y: fc.double({ min: 0, max: 2000, noNaN: true }),
});

function edited(piece: Piece, edit: Edit | undefined): Piece {
  const { value, diagnostics } = applyEdit(piece, edit!);
  expect(diagnostics).toEqual([]);
  return value!.piece;
}

const runOf = (piece: Piece, name: string) => runsOf(piece).find((run) => run.name === name)!;

describe('L1 the camera', () => {
  test('goes from the view to the table and back, y up on the one and down on the other', () => {
    fc.assert(
      fc.property(camera, size, inView, (camera, size, at) => {
        const back = toView(camera, size, toTable(camera, size, at));
        expect(Math.hypot(back.x - at.x, back.y - at.y)).toBeLessThan(1e-6);
        const above = toTable(camera, size, { x: at.x, y: at.y - 10 });
        expect(above.y).toBeGreaterThan(toTable(camera, size, at).y);
      }),
      { seed },
    );
  });

  test('keeps in place what it zooms at, and what is pushed moves along', () => {
    fc.assert(
      fc.property(
        camera,
        size,
        inView,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (camera, size, at, factor) => {
          const before = toTable(camera, size, at);
          const after = toTable(zoomed(camera, size, at, factor), size, at);
          expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeLessThan(1e-6);
          const here = toView(pushed(camera, { x: 7, y: -9 }), size, before);
          expect(Math.hypot(here.x - at.x - 7, here.y - at.y + 9)).toBeLessThan(1e-6);
        },
      ),
      { seed },
    );
  });

  test('shows all of a box that it fits, with room around', () => {
    fc.assert(
      fc.property(point, point, size, (a, b, size) => {
        const box = boxBetween(a, b);
        const seen = seenBox(fitted(box, size), size);
        expect(holds(seen, { x: box.left, y: box.top }) && holds(seen, { x: box.right, y: box.bottom })).toBe(
          true,
        );
      }),
      { seed },
    );
  });

  test('measures by round lengths', () => {
    expect([0.1, 0.5, 1, 3, 7].map((mm) => roundLength(mm, 56))).toEqual([10, 50, 100, 200, 500]);
  });
});

describe('L2 what is moved', () => {
  test('comes to rest within reach only, with an end or a middle on a line of others', () => {
    fc.assert(
      fc.property(
        point,
        fc.array(point, { minLength: 1, maxLength: 4 }),
        fc.array(point, { maxLength: 6 }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (by, anchors, targets, reach) => {
          const { by: snapped, guides } = snapMove(by, anchors, targets, reach, 0);
          for (const axis of ['x', 'y'] as const) {
            expect(Math.abs(snapped[axis] - by[axis])).toBeLessThanOrEqual(reach + 1e-9);
            const guide = guides.find((each) => each.axis === axis);
            if (guide === undefined) {
              expect(snapped[axis]).toBe(by[axis]);
              for (const anchor of anchors)
                for (const target of targets)
                  expect(Math.abs(target[axis] - anchor[axis] - by[axis])).toBeGreaterThan(reach - 1e-9);
            } else {
              const nearest = Math.min(
                ...anchors.map((anchor) => Math.abs(anchor[axis] + snapped[axis] - guide.at)),
              );
              expect(nearest).toBeLessThan(1e-6);
            }
          }
        },
      ),
      { seed },
    );
  });

  test('prefers others to the axis, and the axis to the grid', () => {
    const from = [{ x: 0, y: 0 }];
    const at = (targets: { x: number; y: number }[]) =>
      snapMove({ x: 3, y: 52 }, from, targets, 4, 50).guides.map(
        ({ axis, at, kind }) => `${axis} ${at} ${kind}`,
      );
    expect(at([{ x: 5, y: 500 }])).toEqual(['x 5 run', 'y 50 grid']);
    expect(at([])).toEqual(['x 0 axis', 'y 50 grid']);
  });

  test('a ring has a middle, and no ends', () => {
    const [middle, ...others] = anchorsOf(runOf(parasol, 'rim'), 'flat');
    expect([middle!.x, middle!.y].map((value) => Math.round(value * 1e6) / 1e6 + 0)).toEqual([0, 0]);
    expect(others).toEqual([]);
    expect(anchorsOf(runOf(parasol, 'tentacle 1'), 'flat')).toHaveLength(3);
  });
});

test('L3 a box takes every run in hand of which it holds a pixel', () => {
  const around = (name: string) => widened(boxAround(placesOf(runOf(parasol, name).flat))!, 1);
  expect(runsTouching(parasol, 'flat', around('tentacle 2'))).toEqual(['tentacle 2']);
  expect(runsTouching(parasol, 'flat', around('rim'))).toEqual(['rim']);
  const left = { left: -290, right: -190, bottom: -1000, top: -390 };
  expect(runsTouching(parasol, 'flat', left)).toEqual(['tentacle 1', 'tentacle 2']);
});

describe('L4 what is laid down', () => {
  test.each(laidKinds)('%s: drawn from here to there at its pitch, and at its usual size', (kind) => {
    fc.assert(
      fc.property(point, point, fc.constantFrom(...densities), (from, to, density) => {
        // What would hold more pixels than a piece may have is refused by the door, not here.
        fc.pre(Math.hypot(to.x - from.x, to.y - from.y) < 300);
        const pitch = pitchAt(density);
        for (const shape of [layKinds[kind].drawn(from, to, pitch), layKinds[kind].laid(from, pitch)]) {
          expect(shapeSchema.safeParse(shape).error).toBeUndefined();
          if (pixelCount(shape) > 1) expect(pitchOf(shape)).toBeCloseTo(pitch, 1);
        }
      }),
      { seed, numRuns: 60 },
    );
  });

  test('a strip begins under the hand and ends before it', () => {
    const shape = layKinds.strip.drawn({ x: 10, y: 20 }, { x: 10, y: 125 }, 10);
    expect(shape).toEqual({
      kind: 'straight',
      count: 11,
      start: [10, 20],
      pitchMillimetres: 10,
      directionDegrees: 90,
    });
  });

  test('lies free of all runs, in the density that the maker has', () => {
    for (const kind of laidKinds) {
      let piece = parasol;
      for (let i = 0; i < 3; i++) {
        const before = runsOf(piece).flatMap(({ flat }) => [...placesOf(flat)]);
        const edit = layInRoom(piece, kind);
        const box = boxAround(placesOf(edit.run.flat))!;
        expect(before.some((place) => holds(box, place))).toBe(false);
        piece = edited(piece, edit);
      }
      expect(densityOf(pitchOf(runsOf(piece).at(-1)!.flat)!)).toBe(30);
    }
  });

  test('single pixels join the run of single pixels in hand, else begin a new one', () => {
    const first = onePixelMore(hat, [], { x: 1, y: 2 });
    const piece = edited(hat, first.edit);
    const second = onePixelMore(piece, [first.run], { x: 3.456_789, y: 4 });
    expect(second.run).toBe(first.run);
    expect(runOf(edited(piece, second.edit), first.run).flat).toEqual({
      kind: 'points',
      points: [
        [1, 2],
        [3.46, 4],
      ],
    });
    expect(onePixelMore(piece, ['brim'], { x: 0, y: 0 }).run).toBe('pixels 2');
  });
});

describe('L5 a grip', () => {
  const pulled = (
    piece: Piece,
    name: string,
    grip: string,
    side: 'flat' | 'worn',
    to: { x: number; y: number },
    free = false,
  ) => {
    const found = gripsOf(runOf(piece, name), side).find((each) => each.name === grip)!;
    return runOf(edited(piece, found.pull(piece, to, free).value), name);
  };

  test('at the end of a strip gives more pixels at its pitch, and turns it in steps of 15 degrees', () => {
    const run = pulled(parasol, 'tentacle 1', 'end', 'flat', {
      x: -280 + 0.5 * 700,
      y: -400 - 0.8660254 * 700 + 12,
    });
    expect(run.flat).toMatchObject({
      count: 22,
      pitchMillimetres: 33.33,
      start: [-280, -400],
      directionDegrees: -60,
    });
    expect(pixelCount(run.worn!)).toBe(22);
  });

  test('goes straight on at an odd angle', () => {
    const odd = edited(parasol, {
      kind: 'set-run',
      run: 'tentacle 1',
      set: {
        flat: {
          ...(runOf(parasol, 'tentacle 1').flat as Extract<Shape, { kind: 'straight' }>),
          directionDegrees: 38,
        },
      },
    });
    const far = {
      x: -280 + 900 * Math.cos((38.4 * Math.PI) / 180),
      y: -400 + 900 * Math.sin((38.4 * Math.PI) / 180),
    };
    expect(pulled(odd, 'tentacle 1', 'end', 'flat', far).flat).toMatchObject({
      directionDegrees: 38,
      count: 28,
    });
  });

  test('at the rim of a ring gives more pixels on the bench, and only distance on the body', () => {
    const flat = pulled(parasol, 'rim', 'rim', 'flat', { x: 0, y: 100 });
    expect(pitchOf(flat.flat)).toBeCloseTo(pitchOf(runOf(parasol, 'rim').flat)!, 9);
    expect(pixelCount(flat.flat)).toBe(19);
    const worn = pulled(parasol, 'rim', 'rim', 'worn', { x: 200, y: 0 });
    expect(worn.worn).toMatchObject({ count: 60, diameterMillimetres: 400 });
    expect(worn.flat).toBe(runOf(parasol, 'rim').flat);
  });

  test('at the corner of a grid gives columns and rows', () => {
    const [x, y] = [-41.7 + 16.67 * 7.2, 25 - 16.67 * 1.9];
    expect(pulled(hat, 'badge', 'end', 'flat', { x, y }).flat).toMatchObject({ columns: 8, rows: 3 });
  });

  test('at an arc: its end goes further round, its rim further out, at one pitch', () => {
    const { run } = layInRoom(hat, 'arc');
    const flat: Shape = {
      kind: 'arc',
      count: 11,
      centre: [0, 0],
      radiusMillimetres: 100,
      firstDegrees: 180,
      lastDegrees: 90,
    };
    const piece = edited(hat, { kind: 'add-run', line: 0, index: 0, run: { ...run, name: 'bow', flat } });
    const pitch = pitchOf(flat)!;
    const longer = pulled(piece, 'bow', 'end', 'flat', { x: 100, y: 1 }).flat;
    expect([pixelCount(longer), pitchOf(longer)! - pitch < 1e-9]).toEqual([21, true]);
    const wider = pulled(piece, 'bow', 'rim', 'flat', { x: -150, y: 0 }).flat;
    expect(wider).toMatchObject({ count: 16, lastDegrees: 90 });
    expect(pitchOf(wider)).toBeCloseTo(pitch, 9);
  });

  test('of a single pixel moves that pixel', () => {
    const run = pulled(parasol, 'tentacle 1', 'pixel 3', 'worn', { x: 1, y: 2 });
    expect(placesOf(run.worn!)[3]).toEqual({ x: 1, y: 2 });
    expect(placesOf(run.worn!)[4]).toEqual(placesOf(runOf(parasol, 'tentacle 1').worn!)[4]);
  });
});

describe('L6 the data line', () => {
  test('jumps from the last pixel that is there to the first of the next run', () => {
    const runs = runsOf(parasol);
    const [jump, ...others] = jumpsBetween(runs, 'flat');
    expect([others.length, jump!.to]).toEqual([7, placesOf(runs[1]!.flat)[0]]);
    expect(jump!.millimetres).toBeCloseTo(
      Math.hypot(jump!.to.x - jump!.from.x, jump!.to.y - jump!.from.y),
      9,
    );
    expect(wiredPlaces(runOf(wings, 'spine'), 'flat')).toHaveLength(9);
  });

  test('points along the way, at most about so often', () => {
    const way = [
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: -100 },
    ];
    expect(
      arrowsAlong(way, 130).map(({ at, degrees }) => [Math.round(at.x), Math.round(at.y), degrees]),
    ).toEqual([
      [67, 0, 0],
      [200, 0, 0],
      [300, -33, -90],
    ]);
    expect(arrowsAlong([{ x: 0, y: 0 }], 130)).toEqual([]);
  });

  test('leaves words out that would stand on each other', () => {
    const line = (y: number, long = 200) => ({ from: { x: 0, y }, to: { x: long, y }, words: '473 mm' });
    expect(labelsApart([line(0), line(8), line(40), line(80, 30)]).map(({ y }) => y)).toEqual([0, 40]);
  });

  test('addresses count as the layout does, removed pixels left out', () => {
    const { pixels } = prepareLayout(wings).value!;
    for (const [index, { name }] of runsOf(wings).entries()) {
      const expected = pixels.flatMap(({ run }, address) => (run === index ? [address] : []));
      expect(addressesOf(wings, [name])).toEqual(expected);
    }
  });

  test('a row dragged over the list comes to lie under the pointer', () => {
    const rows = [0, 30, 60].map((top) => ({ top, bottom: top + 30 }));
    expect([-50, 10, 30, 59, 300].map((y) => indexAt(rows, y))).toEqual([0, 0, 1, 1, 2]);
  });
});

test('L7 every number of a shape can be set, and nothing else changes with it', () => {
  const shapes = [parasol, wings, hat].flatMap((piece) => runsOf(piece).map(({ flat }) => flat));
  for (const shape of shapes) {
    for (const field of fieldsOf(shape)) {
      expect(field.with(field.value)).toEqual(
        // A pitch of rows that goes without saying is written down once it is set.
        field.label === 'Row pitch' ? { ...shape, rowPitchMillimetres: field.value } : shape,
      );
      expect(shapeSchema.safeParse(field.with(Math.min(field.max, field.value + 1))).error).toBeUndefined();
    }
  }
});

test('L8 a new run is unlit until a clip plays on it', () => {
  const edit = layInRoom(parasol, 'ring');
  const noAll = {
    ...parasol,
    looks: parasol.looks.filter(
      ({ tracks }) => !tracks.some(({ clips }) => clips.some(({ zone }) => zone === 'all')),
    ),
  };
  expect(
    isUnlit(edited({ ...noAll, controls: { ...parasol.controls, buttons: [] } }, edit), edit.run.name),
  ).toBe(true);
  expect(isUnlit(parasol, 'rim')).toBe(false);
  expect(isUnlit(parasol, 'tentacle 3')).toBe(false);
});
