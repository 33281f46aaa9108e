/** Adding a run: what it is called, how dense it is, and where there is room for it. */
import type { Edit } from '../../../../engine/edit/edit.ts';
import { pitchOf } from '../../../../engine/edit/geometry/pitch.ts';
import { freeName } from '../../../../engine/edit/offers/free-name.ts';
import { namesOf } from '../../../../engine/edit/references.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece, Shape } from '../../../../engine/piece/schema.ts';
import { boxAround, holds, widened } from '../surface/box.ts';
import { placesOf, runsOf } from '../surface/places.ts';
import { densityOf, pitchAt } from './densities.ts';
import type { LaidKind } from './kinds.ts';

interface Addition {
  readonly name: string;
  readonly pitch: number;
  /** Adds the run at the end of the last line. */
  edit(flat: Shape): Edit;
}

const usualDensity = 60;

/** A maker who has begun with one reel goes on with it. */
export function addition(piece: Piece, kind: LaidKind): Addition {
  const name = freeName(kind, namesOf(piece, 'zone'));
  const line = piece.lines.length - 1;
  const { runs } = piece.lines[line]!;
  const pitches = runs
    .map(({ flat }) => pitchOf(flat) ?? 0)
    .filter((pitch) => densityOf(pitch) !== undefined);
  const run = { name, removed: [], hidden: [] };
  return {
    name,
    pitch: pitches.at(-1) ?? pitchAt(usualDensity),
    edit: (flat) => ({ kind: 'add-run', line, index: runs.length, run: { ...run, flat } }),
  };
}

/** Room that is left to other runs, in millimetres. */
const clearance = 20;

/**
 * Where a shape can lie without touching a run: as near as possible to a point, looked for in rings of
 * spots around it.
 * @param lay the shape with its middle at a spot
 */
export function freeSpot(piece: Piece, lay: (middle: Point) => Shape, near: Point): Point {
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
