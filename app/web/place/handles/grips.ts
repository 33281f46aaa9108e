/**
 * The grips of a single run: where they are, and what pulling one comes to. On the bench a run is cut from
 * strip: its pitch stays, and a longer run has more pixels. On the body the pixels are given, and it is the
 * distance between them that follows the hand.
 */
import type { Checked } from '../../../../engine/diagnostic.ts';
import { type Edit, together } from '../../../../engine/edit/edit.ts';
import { lengthOfPath } from '../../../../engine/edit/geometry/path.ts';
import { pitchOf, sweepOf } from '../../../../engine/edit/geometry/pitch.ts';
import { tidyDegrees } from '../../../../engine/edit/geometry/plane.ts';
import { type ByShape, byShape, type ShapeOf } from '../../../../engine/edit/geometry/shape-of.ts';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import { changeCount } from '../../../../engine/edit/offers/count.ts';
import { changeGrid } from '../../../../engine/edit/offers/grid.ts';
import { found, given } from '../../../../engine/edit/outcome.ts';
import { snapDegrees } from '../../../../engine/edit/snap/snap-plane.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import { limits } from '../../../../engine/piece/limits.ts';
import type { Piece, Run, Shape } from '../../../../engine/piece/schema.ts';
import { placesOf, shapeOn } from '../surface/places.ts';

export interface Grip {
  readonly name: 'end' | 'rim' | `pixel ${number}`;
  readonly at: Point;
  /** For those who look closer: what it does. */
  readonly title: string;
  /** The edit that brings the grip to a point, of the piece as it was when the hand began. */
  pull(piece: Piece, to: Point, free: boolean): Checked<Edit>;
}

/** A grip of a shape, still without a run: the flat one changes the count, the worn one the shape. */
interface ShapeGrip {
  readonly name: Grip['name'];
  readonly at: Point;
  readonly title: string;
  flat(run: string, piece: Piece, to: Point, free: boolean): Checked<Edit>;
  worn(to: Point, free: boolean): Shape;
}

export function gripsOf(run: Run, side: Side): Grip[] {
  const shape = shapeOn(run, side);
  return byShape(grips, shape).map(({ name, at, title, flat, worn }) => ({
    name,
    at,
    title: side === 'flat' || name.startsWith('pixel') ? title : 'Pull to spread or gather the pixels',
    pull: (piece, to, free) =>
      side === 'flat' ? flat(run.name, piece, to, free) : reshaped(run.name, worn(to, free)),
  }));
}

const turnStep = 15;
const degreesPerRadian = 180 / Math.PI;
const leastPitch = 0.5;
/** More of them would hide the run. */
const mostPixelGrips = 80;

const grips: ByShape<[], readonly ShapeGrip[]> = {
  straight(shape) {
    const start = { x: shape.start[0], y: shape.start[1] };
    const { pitchMillimetres: pitch, directionDegrees } = shape;
    const towards = (to: Point, free: boolean) => direction(angle(start, to), directionDegrees, free);
    return [
      {
        name: 'end',
        at: placesOf(shape).at(-1)!,
        title: 'Pull for more pixels or fewer, or to turn the strip',
        flat: (run, piece, to, free) =>
          given(changeCount(piece, run, 1 + Math.round(distance(start, to) / pitch), 'pitch'), (count) => {
            const degrees = tidyDegrees(towards(to, free) - directionDegrees);
            const turn: Edit = { kind: 'turn-runs', side: 'flat', runs: [run], about: shape.start, degrees };
            return found(together(`Pull the end of run ${run}`, [count, turn]));
          }),
        worn: (to, free) => ({
          ...shape,
          directionDegrees: towards(to, free),
          pitchMillimetres: spread(distance(start, to), shape.count - 1, pitch),
        }),
      },
    ];
  },

  ring(shape) {
    const centre = { x: shape.centre[0], y: shape.centre[1] };
    return [
      {
        name: 'rim',
        at: { x: centre.x + shape.diameterMillimetres / 2, y: centre.y },
        title: 'Pull for a larger ring of more pixels, or a smaller one',
        flat: (run, piece, to) => {
          const count = Math.max(1, Math.round((2 * Math.PI * distance(centre, to)) / pitchOf(shape)!));
          return changeCount(piece, run, count, 'pitch');
        },
        worn: (to) => ({ ...shape, diameterMillimetres: Math.max(1, 2 * distance(centre, to)) }),
      },
    ];
  },

  arc(shape) {
    const centre = { x: shape.centre[0], y: shape.centre[1] };
    const sweep = sweepOf(shape);
    const radians = Math.abs(sweep) / degreesPerRadian;
    const pitch = pitchOf(shape) ?? 1000 / 60;
    const middle = (shape.firstDegrees + sweep / 2) / degreesPerRadian;
    const { radiusMillimetres: radius } = shape;
    return [
      {
        name: 'end',
        at: placesOf(shape).at(-1)!,
        title: 'Pull for more pixels or fewer along the arc',
        flat(run, piece, to, free) {
          const wanted = Math.abs(sweepTo(shape, to, free)) / degreesPerRadian;
          return changeCount(piece, run, 1 + Math.round((radius * wanted) / pitch), 'pitch');
        },
        worn: (to, free) => ({ ...shape, lastDegrees: shape.firstDegrees + sweepTo(shape, to, free) }),
      },
      {
        name: 'rim',
        at: { x: centre.x + radius * Math.cos(middle), y: centre.y + radius * Math.sin(middle) },
        title: 'Pull for a wider arc of more pixels, or a narrower one',
        flat(run, piece, to) {
          const steps = Math.max(1, Math.round((distance(centre, to) * radians) / pitch));
          return given(changeCount(piece, run, steps + 1, 'pitch'), (count) => {
            const radiusMillimetres = radians > 0 ? (steps * pitch) / radians : radius;
            const flat = { ...shape, count: steps + 1, radiusMillimetres };
            return found(
              together(`Pull the rim of run ${run}`, [count, { kind: 'set-run', run, set: { flat } }]),
            );
          });
        },
        worn: (to) => ({ ...shape, radiusMillimetres: Math.max(1, distance(centre, to)) }),
      },
    ];
  },

  grid(shape) {
    const { columns, rows, pitchMillimetres: pitch, directionDegrees, order } = shape;
    const rowPitch = shape.rowPitchMillimetres ?? pitch;
    const start = { x: shape.start[0], y: shape.start[1] };
    // The corner opposite to the first pixel, whichever way the last row is wired.
    const corner = placesOf({ ...shape, order: 'rows' }).at(-1)!;
    const across = (to: Point) => {
      const turn = (angle(start, to) - directionDegrees) / degreesPerRadian;
      return { along: distance(start, to) * Math.cos(turn), down: -distance(start, to) * Math.sin(turn) };
    };
    return [
      {
        name: 'end',
        at: corner,
        title: 'Pull for more columns and rows, or fewer',
        flat(run, piece, to) {
          const { along, down } = across(to);
          const fitting = (length: number, step: number) => Math.max(1, 1 + Math.round(length / step));
          return changeGrid(piece, run, fitting(along, pitch), fitting(down, rowPitch));
        },
        worn(to) {
          const { along, down } = across(to);
          return {
            ...shape,
            order,
            pitchMillimetres: spread(along, columns - 1, pitch),
            rowPitchMillimetres: spread(down, rows - 1, rowPitch),
          };
        },
      },
    ];
  },

  /** The count alone; nodes and control points have handles of their own. */
  path(shape) {
    const { pitchMillimetres: pitch, start } = shape;
    const last = placesOf(shape).at(-1)!;
    const first = { x: start[0], y: start[1] };
    return [
      {
        name: 'end',
        at: last,
        title: 'Pull for more pixels or fewer along the curve',
        flat: (run, piece, to) => changeCount(piece, run, 1 + nearestStep(shape, to), 'pitch'),
        worn: (to) => ({
          ...shape,
          pitchMillimetres: Math.max(
            leastPitch,
            (pitch * distance(first, to)) / (distance(first, last) || 1),
          ),
        }),
      },
    ];
  },

  points(shape) {
    const { points } = shape;
    if (points.length > mostPixelGrips) return [];
    const moved = (i: number, to: Point): Shape => ({
      ...shape,
      points: points.map((point, other) => (other === i ? [to.x, to.y] : point)),
    });
    return points.map(([x, y], i) => ({
      name: `pixel ${i}`,
      at: { x, y },
      title: `Pixel ${i} of the run: drag it to another place`,
      flat: (run, _, to) => found({ kind: 'set-run', run, set: { flat: moved(i, to) } }),
      worn: (to) => moved(i, to),
    }));
  },
};

/** How many steps along the path, or straight on behind it, lead closest to a point. */
function nearestStep(shape: ShapeOf<'path'>, to: Point): number {
  const reach = lengthOfPath(shape) + distance({ x: shape.start[0], y: shape.start[1] }, to);
  const steps = Math.min(limits.pixels - 1, Math.ceil(reach / shape.pitchMillimetres));
  const off = placesOf({ ...shape, count: steps + 1 }).map((place) => distance(place, to));
  return off.indexOf(Math.min(...off));
}

/** So many steps over a length; none where there is but one pixel. */
function spread(length: number, steps: number, before: number): number {
  return steps < 1 ? before : Math.max(leastPitch, length / steps);
}

/** At rest in steps of 15 degrees, or where it was: a strip at an odd angle can be pulled straight on. */
function direction(wanted: number, before: number, free: boolean): number {
  if (free) return tidyDegrees(wanted);
  const snapped = snapDegrees(wanted, turnStep);
  const off = (degrees: number) => Math.abs(tidyDegrees(wanted - degrees));
  return off(before) <= off(snapped) ? before : tidyDegrees(snapped);
}

/** How far round an arc goes to a point, the way it goes: up to once round. */
function sweepTo(shape: ShapeOf<'arc'>, to: Point, free: boolean): number {
  const centre = { x: shape.centre[0], y: shape.centre[1] };
  const ahead = angle(centre, to) - shape.firstDegrees;
  const turn = ((ahead % 360) + 360) % 360;
  const sweep = sweepOf(shape) < 0 ? turn - 360 : turn;
  return free ? sweep : snapDegrees(sweep, turnStep);
}

function reshaped(run: string, worn: Shape): Checked<Edit> {
  return found({ kind: 'set-run', run, set: { worn } });
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function angle(from: Point, to: Point): number {
  return Math.atan2(to.y - from.y, to.x - from.x) * degreesPerRadian;
}
