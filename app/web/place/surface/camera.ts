/**
 * Which part of a table is seen, and how large. The table is measured in millimetres with y up, the view
 * in pixels of the screen with y down, both corners at 0.
 */
import type { Point } from '../../../../engine/layout/layout.ts';
import { type Box, middleOf } from './box.ts';

export interface Camera {
  /** What stands in the middle of the view. */
  readonly middle: Point;
  readonly millimetresPerPixel: number;
}

export interface ViewSize {
  readonly width: number;
  readonly height: number;
}

/** From the single pixel of a strip to the largest place that a file can tell of. */
const closest = 0.02;
const farthest = 10_000;

/** Left free around what is shown, as a share of the view's shorter side: handles need room, and so do eyes. */
const marginShare = 0.15;

/** A smaller piece is not blown up beyond this many millimetres across. */
const leastMillimetres = 120;

/** The camera that shows a whole box. */
export function fitted(box: Box, { width, height }: ViewSize): Camera {
  const margin = 2 * marginShare * Math.min(width, height);
  const across = Math.max(box.right - box.left, leastMillimetres) / Math.max(width - margin, 1);
  const down = Math.max(box.top - box.bottom, leastMillimetres) / Math.max(height - margin, 1);
  return { middle: middleOf(box), millimetresPerPixel: bounded(Math.max(across, down)) };
}

/** Larger by a factor above 1, smaller below; what lies at a point of the view stays there. */
export function zoomed(camera: Camera, size: ViewSize, at: Point, factor: number): Camera {
  const millimetresPerPixel = bounded(camera.millimetresPerPixel / factor);
  const kept = toTable(camera, size, at);
  const x = kept.x - (at.x - size.width / 2) * millimetresPerPixel;
  const y = kept.y + (at.y - size.height / 2) * millimetresPerPixel;
  return { middle: { x, y }, millimetresPerPixel };
}

/** The table pushed along by so many pixels. */
export function pushed(camera: Camera, by: Point): Camera {
  const { middle, millimetresPerPixel } = camera;
  return {
    ...camera,
    middle: { x: middle.x - by.x * millimetresPerPixel, y: middle.y + by.y * millimetresPerPixel },
  };
}

/** The point of the table at a point of the view. */
export function toTable({ middle, millimetresPerPixel }: Camera, size: ViewSize, at: Point): Point {
  return {
    x: middle.x + (at.x - size.width / 2) * millimetresPerPixel,
    y: middle.y - (at.y - size.height / 2) * millimetresPerPixel,
  };
}

/** The point of the view at a point of the table. */
export function toView({ middle, millimetresPerPixel }: Camera, size: ViewSize, at: Point): Point {
  return {
    x: size.width / 2 + (at.x - middle.x) / millimetresPerPixel,
    y: size.height / 2 - (at.y - middle.y) / millimetresPerPixel,
  };
}

/** The part of the table that is seen. */
export function seenBox({ middle, millimetresPerPixel }: Camera, { width, height }: ViewSize): Box {
  const across = (width / 2) * millimetresPerPixel;
  const down = (height / 2) * millimetresPerPixel;
  return { left: middle.x - across, right: middle.x + across, bottom: middle.y - down, top: middle.y + down };
}

/** A round length of at least so many pixels: steps of the grid, the scale bar. */
export function roundLength(millimetresPerPixel: number, leastPixels: number): number {
  const least = millimetresPerPixel * leastPixels;
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 5, 10].find((step) => step * power >= least * 0.999) ?? 10;
  return factor * power;
}

function bounded(millimetresPerPixel: number): number {
  return Math.min(farthest, Math.max(closest, millimetresPerPixel));
}
