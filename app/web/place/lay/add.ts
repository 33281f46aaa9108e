/** Adding a run: how dense it is, and where there is room for it. */
import type { EditOf } from '../../../../engine/edit/edit.ts';
import { pitchOf } from '../../../../engine/edit/geometry/pitch.ts';
import { newRun } from '../../../../engine/edit/offers/add-run.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece, Shape } from '../../../../engine/piece/schema.ts';
import { boxAround, holds, middleOf, widened } from '../surface/box.ts';
import { placesOf, placesOn, runsOf } from '../surface/places.ts';
import { densityOf, pitchAt } from './densities.ts';
import { type LaidKind, layKinds } from './kinds.ts';

const usualDensity = 60;

/** A maker who has begun with one reel goes on with it. */
export function pitchOnHand(piece: Piece): number {
  const pitches = runsOf(piece).map(({ flat }) => pitchOf(flat) ?? 0);
  return pitches.filter((pitch) => densityOf(pitch) !== undefined).at(-1) ?? pitchAt(usualDensity);
}

/** Lays a run of the usual size down where there is room. */
export function layInRoom(piece: Piece, kind: LaidKind): EditOf<'add-run'> {
  const pitch = pitchOnHand(piece);
  const lay = (middle: Point) => layKinds[kind].laid(middle, pitch);
  const all = boxAround(placesOn(runsOf(piece), 'flat'));
  return newRun(piece, lay(freeSpot(piece, lay, all === undefined ? { x: 0, y: 0 } : middleOf(all))), kind);
}

/** Room that is left to other runs, in millimetres. */
const clearance = 20;

/**
 * Where a shape can lie without touching a run: as near as possible to a point, looked for in rings of
 * spots around it.
 * @param lay the shape with its middle at a spot
 */
function freeSpot(piece: Piece, lay: (middle: Point) => Shape, near: Point): Point {
  const taken = runsOf(piece).flatMap(({ flat }) => [...placesOf(flat)]);
  const isFree = (spot: Point) => {
    const box = widened(boxAround(placesOf(lay(spot)))!, clearance);
    return !taken.some((place) => holds(box, place));
  };
  for (let ring = 0; ring < 60; ring++) {
    const spots = ringOfSpots(near, ring).filter(isFree);
    if (spots.length > 0) return spots[0]!;
  }
  return near;
}

const spotMillimetres = 40;

/** Below first: that is where a hand would go on. */
function ringOfSpots({ x, y }: Point, ring: number): Point[] {
  if (ring === 0) return [{ x, y }];
  const radius = ring * spotMillimetres;
  const directions = 8 * ring;
  return Array.from({ length: directions }, (_, i) => {
    const turn = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / directions);
    return {
      x: Math.round((x + radius * Math.sin(turn)) / 10) * 10,
      y: Math.round((y - radius * Math.cos(turn)) / 10) * 10,
    };
  });
}
