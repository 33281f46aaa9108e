/** Where the pixels of runs lie, worked out once for every shape. */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import { pixelPlaces } from '../../../../engine/layout/shapes.ts';
import type { Piece, Run, Shape } from '../../../../engine/piece/schema.ts';

/** Shapes are never changed, only replaced, so that a place once worked out stays true. */
const known = new WeakMap<Shape, readonly Point[]>();

export function placesOf(shape: Shape): readonly Point[] {
  let places = known.get(shape);
  if (places === undefined) {
    places = pixelPlaces(shape);
    known.set(shape, places);
  }
  return places;
}

/** A run without a worn place of its own is seen where it lies on the bench. */
export function shapeOn(run: Run, side: Side): Shape {
  return run[side] ?? run.flat;
}

/** All runs in the order of the data line. */
export function runsOf(piece: Piece): Run[] {
  return piece.lines.flatMap(({ runs }) => runs);
}

/** All pixels of some runs on one side, removed ones too: they leave a gap that has a place. */
export function placesOn(runs: readonly Run[], side: Side): Point[] {
  return runs.flatMap((run) => [...placesOf(shapeOn(run, side))]);
}

/** Addresses on the line of the pixels of some runs; removed ones have none. */
export function addressesOf(piece: Piece, names: readonly string[]): number[] {
  const addresses: number[] = [];
  let next = 0;
  for (const run of runsOf(piece)) {
    const count = placesOf(run.flat).length - new Set(run.removed).size;
    if (names.includes(run.name)) for (let i = 0; i < count; i++) addresses.push(next + i);
    next += count;
  }
  return addresses;
}
