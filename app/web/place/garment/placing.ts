/**
 * A picture under the table: where it lies, and how large. Spots on the picture are counted in its own
 * pixels from its upper left corner, y down; the table in millimetres, y up.
 */
import { type Position, turnPoint } from '../../../../engine/edit/geometry/plane.ts';

export type Spot = Readonly<Position>;

export interface Placing {
  /** Where the middle of the picture lies on the table. */
  readonly middle: Spot;
  readonly millimetresPerPixel: number;
  /** Counter-clockwise. */
  readonly degrees: number;
  /** 0 to 1. */
  readonly opacity: number;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export function toTable(
  { middle, millimetresPerPixel, degrees }: Placing,
  size: PictureSize,
  [x, y]: Spot,
): Position {
  const flat: Position = [
    middle[0] + (x - size.width / 2) * millimetresPerPixel,
    middle[1] - (y - size.height / 2) * millimetresPerPixel,
  ];
  return turnPoint(flat, middle, degrees);
}

export function toPicture(
  { middle, millimetresPerPixel, degrees }: Placing,
  size: PictureSize,
  spot: Spot,
): Position {
  const [x, y] = turnPoint(spot, middle, -degrees);
  return [
    size.width / 2 + (x - middle[0]) / millimetresPerPixel,
    size.height / 2 - (y - middle[1]) / millimetresPerPixel,
  ];
}

/** A line on the picture over something whose length is known. */
export interface KnownLength {
  readonly from: Spot;
  readonly to: Spot;
  readonly millimetres: number;
}

/** A photo is neither a microscope's nor a map. */
export const scaleBounds = { least: 0.001, most: 1000 } as const;

/**
 * The picture grown so that the line has its length; the middle of the line stays where it is on the table.
 * Undefined where that cannot be: a line without length, or a scale that no garment has.
 */
export function scaledBy(
  placing: Placing,
  size: PictureSize,
  { from, to, millimetres }: KnownLength,
): Placing | undefined {
  const pixels = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const millimetresPerPixel = millimetres / pixels;
  if (!(millimetresPerPixel >= scaleBounds.least && millimetresPerPixel <= scaleBounds.most))
    return undefined;
  const centre: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const before = toTable(placing, size, centre);
  const grown = { ...placing, millimetresPerPixel };
  const after = toTable(grown, size, centre);
  const middle: Position = [
    placing.middle[0] + before[0] - after[0],
    placing.middle[1] + before[1] - after[1],
  ];
  return { ...grown, middle };
}

/** How a picture lies when it is first put down: over a box of the table, upright, quite faint. */
export function firstPlacing(
  size: PictureSize,
  box: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number },
): Placing {
  const scale = Math.max((box.right - box.left) / size.width, (box.top - box.bottom) / size.height);
  return {
    middle: [(box.left + box.right) / 2, (box.bottom + box.top) / 2],
    millimetresPerPixel: Math.min(scaleBounds.most, Math.max(scaleBounds.least, scale)),
    degrees: 0,
    opacity: 0.5,
  };
}
