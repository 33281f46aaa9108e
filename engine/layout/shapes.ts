/** Where the pixels of each kind of shape lie. Lengths in millimetres, y up, angles counter-clockwise. */
import type { Shape } from '../piece/schema.ts';
import type { Point } from './layout.ts';
import { placesAlongPath } from './path.ts';

type ShapeOf<Kind extends Shape['kind']> = Extract<Shape, { readonly kind: Kind }>;
type Placers = { readonly [Kind in Shape['kind']]: (shape: ShapeOf<Kind>) => Point[] };

/** Centres of the pixels of a shape, in the order in which they are wired. */
export function pixelPlaces(shape: Shape): Point[] {
  const place = placers[shape.kind] as (shape: Shape) => Point[];
  return place(shape);
}

export function pixelCount(shape: Shape): number {
  if (shape.kind === 'grid') return shape.columns * shape.rows;
  return shape.kind === 'points' ? shape.points.length : shape.count;
}

const placers: Placers = {
  /** Evenly spaced from the first pixel on. */
  straight({ count, start: [x, y], pitchMillimetres, directionDegrees }) {
    const along = unitVector(directionDegrees);
    return indices(count).map((i) => ({
      x: x + i * pitchMillimetres * along.x,
      y: y + i * pitchMillimetres * along.y,
    }));
  },

  /** Evenly spaced on the circle; flattening then presses it down, as a slanted look at it does. */
  ring({ count, centre: [x, y], diameterMillimetres, firstDegrees, clockwise, flattening }) {
    const step = (clockwise ? -360 : 360) / count;
    return indices(count).map((i) => {
      const towards = unitVector(firstDegrees + i * step);
      return {
        x: x + (diameterMillimetres / 2) * towards.x,
        y: y + (diameterMillimetres / 2) * towards.y * flattening,
      };
    });
  },

  /** Both ends are pixels, unlike a ring, whose end is its beginning. */
  arc({ count, centre: [x, y], radiusMillimetres, firstDegrees, lastDegrees }) {
    const step = count === 1 ? 0 : (lastDegrees - firstDegrees) / (count - 1);
    return indices(count).map((i) => {
      const towards = unitVector(firstDegrees + i * step);
      return { x: x + radiusMillimetres * towards.x, y: y + radiusMillimetres * towards.y };
    });
  },

  /** Row by row like lines of text; alternating rows run back on every second line, as one wire would. */
  grid({ columns, rows, start: [x, y], pitchMillimetres, rowPitchMillimetres, directionDegrees, order }) {
    const along = unitVector(directionDegrees);
    const down = { x: along.y, y: -along.x };
    const rowPitch = rowPitchMillimetres ?? pitchMillimetres;
    return indices(columns * rows).map((i) => {
      const row = Math.floor(i / columns);
      const step = i % columns;
      const column = order === 'alternating' && row % 2 === 1 ? columns - 1 - step : step;
      return {
        x: x + column * pitchMillimetres * along.x + row * rowPitch * down.x,
        y: y + column * pitchMillimetres * along.y + row * rowPitch * down.y,
      };
    });
  },

  /** At equal steps along the curves, as a strip glued along the line. */
  path: placesAlongPath,

  points({ points }) {
    return points.map(([x, y]) => ({ x, y }));
  },
};

function indices(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i);
}

/** Exact on the axes, so that an upright strip has no stray sideways part. */
function unitVector(degrees: number): Point {
  const turn = ((degrees % 360) + 360) % 360;
  if (turn % 90 === 0) return quarterTurns[turn / 90]!;
  const radians = (turn * Math.PI) / 180;
  return { x: Math.cos(radians), y: Math.sin(radians) };
}

const quarterTurns: readonly Point[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
];
