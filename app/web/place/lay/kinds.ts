/** What a beginner can lay on the table, at a size that makes sense and with the usual number of pixels. */
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Shape } from '../../../../engine/piece/schema.ts';

export const laidKinds = ['strip', 'ring', 'arc', 'grid'] as const;
export type LaidKind = (typeof laidKinds)[number];

interface Kind {
  readonly title: string;
  /** For the hint: what the pointer does to lay it by hand. */
  readonly byHand: string;
  /** What snaps while it is drawn: the way that it goes, or the spot where it ends. */
  readonly steady: 'direction' | 'end';
  /** Laid down with its middle at a point. */
  laid(at: Point, pitch: number): Shape;
  /** Drawn from here to there: as many pixels as fit at this pitch. */
  drawn(from: Point, to: Point, pitch: number): Shape;
}

/** A strip as long as a forearm; else numbers of pixels. */
const usual = { stripMillimetres: 500, ring: 24, arc: 20, side: 8 } as const;
const degreesPerRadian = 180 / Math.PI;

export const layKinds: { readonly [Name in LaidKind]: Kind } = {
  strip: {
    title: 'Strip',
    byHand: 'Drag from the first pixel to the last.',
    steady: 'direction',
    laid: ({ x, y }, pitch) => {
      const count = Math.max(2, Math.round(usual.stripMillimetres / pitch));
      return strip({ x: x - ((count - 1) * pitch) / 2, y }, count, pitch, 0);
    },
    drawn: (from, to, pitch) =>
      strip(from, 1 + Math.floor(distance(from, to) / pitch + 1e-6), pitch, angle(from, to)),
  },

  ring: {
    title: 'Ring',
    byHand: 'Drag from the middle to the rim.',
    steady: 'end',
    laid: (at, pitch) => ring(at, usual.ring, pitch),
    drawn: (from, to, pitch) =>
      ring(from, Math.max(3, Math.round((2 * Math.PI * distance(from, to)) / pitch)), pitch),
  },

  arc: {
    title: 'Arc',
    byHand: 'Drag from one end to the other.',
    steady: 'direction',
    laid: (at, pitch) => arc(at, usual.arc, pitch, 180),
    drawn: (from, to, pitch) => {
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
      const steps = Math.max(2, Math.round((Math.PI * distance(from, to)) / 2 / pitch));
      return arc(middle, steps + 1, pitch, angle(middle, from));
    },
  },

  grid: {
    title: 'Grid',
    byHand: 'Drag from corner to corner.',
    steady: 'end',
    laid: ({ x, y }, pitch) => {
      const half = ((usual.side - 1) * pitch) / 2;
      return grid({ x: x - half, y: y + half }, usual.side, usual.side, pitch);
    },
    drawn: (from, to, pitch) => {
      const fitting = (length: number) => 1 + Math.floor(Math.abs(length) / pitch + 1e-6);
      const corner = { x: Math.min(from.x, to.x), y: Math.max(from.y, to.y) };
      return grid(corner, fitting(to.x - from.x), fitting(to.y - from.y), pitch);
    },
  },
};

function strip(start: Point, count: number, pitch: number, directionDegrees: number): Shape {
  return {
    kind: 'straight',
    count,
    start: spot(start),
    pitchMillimetres: pitch,
    directionDegrees: tidy(directionDegrees),
  };
}

/** As large as its strip is long, first pixel at the top. */
function ring(centre: Point, count: number, pitch: number): Shape {
  return {
    kind: 'ring',
    count,
    centre: spot(centre),
    diameterMillimetres: tidy((count * pitch) / Math.PI),
    firstDegrees: 90,
    clockwise: true,
    flattening: 1,
  };
}

/** Half a turn clockwise, over the top where it begins at the left. */
function arc(centre: Point, count: number, pitch: number, firstDegrees: number): Shape {
  return {
    kind: 'arc',
    count,
    centre: spot(centre),
    radiusMillimetres: tidy(((count - 1) * pitch) / Math.PI),
    firstDegrees: tidy(firstDegrees),
    lastDegrees: tidy(firstDegrees - 180),
  };
}

/** Wired to and fro, as flexible panels are. */
function grid(start: Point, columns: number, rows: number, pitch: number): Shape {
  return {
    kind: 'grid',
    columns,
    rows,
    start: spot(start),
    pitchMillimetres: pitch,
    directionDegrees: 0,
    order: 'alternating',
  };
}

/** To a hundredth of a millimetre: nobody lays finer, and files stay readable. */
function tidy(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

function spot({ x, y }: Point): [number, number] {
  return [tidy(x), tidy(y)];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function angle(from: Point, to: Point): number {
  return Math.atan2(to.y - from.y, to.x - from.x) * degreesPerRadian;
}
