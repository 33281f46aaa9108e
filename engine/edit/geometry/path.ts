/**
 * Paths under the hand. Their nodes are the start, 0, and the end of each curve, 1, 2, 3 ...; between node n
 * and the next lies curve n. Each function gives a new path, with as many pixels at the same pitch.
 */
import { between, cutCubic, distance, type Place } from '../../layout/cubic.ts';
import { cubicsOf, lengthOfPath, type PathShape } from '../../layout/path.ts';
import { limits } from '../../piece/limits.ts';
import { inserted, replaced, without } from '../lists.ts';
import { movePoint, type Position } from './plane.ts';

type Curve = PathShape['curves'][number];

export { lengthOfPath, type PathShape };

/** How many pixels lie on the curves at this pitch, the one at the start included, and none behind the end. */
export function countThatFits(path: Pick<PathShape, 'start' | 'curves' | 'pitchMillimetres'>): number {
  // A pixel that rounding puts a trillionth behind the end is at the end.
  const steps = Math.floor(lengthOfPath(path) / path.pitchMillimetres + 1e-9);
  return Math.min(limits.pixels, steps + 1);
}

/** The path with every point of it changed: the curves follow where that is a move, a turn and the like. */
export function withEachPoint(path: PathShape, change: (point: Position) => Position): PathShape {
  return {
    ...path,
    start: change(path.start),
    curves: path.curves.map(({ firstControl, secondControl, end }) => ({
      firstControl: change(firstControl),
      secondControl: change(secondControl),
      end: change(end),
    })),
  };
}

/**
 * One more node on a curve, which stays as it is. The same path where there is no such curve, or where it
 * has as many as a file may hold.
 * @param at parameter of the curve, above 0 and below 1
 */
export function insertNode(path: PathShape, curve: number, at: number): PathShape {
  const cubic = cubicsOf(path)[curve];
  if (cubic === undefined || path.curves.length >= limits.curvesPerPath) return path;
  const [before, after] = cutCubic(cubic, at).map(curveOf) as [Curve, Curve];
  return { ...path, curves: inserted(replaced(path.curves, curve, after), curve, before) };
}

/**
 * The path without a node. Its neighbours' control points reach further, by the share at which the node lay:
 * what `insertNode` put in goes without a trace. An end takes its curve along; of a single curve nothing goes.
 */
export function removeNode(path: PathShape, node: number): PathShape {
  const { curves } = path;
  if (curves.length === 1 || node < 0 || node > curves.length) return path;
  if (node === 0) return { ...path, start: curves[0]!.end, curves: without(curves, 0) };
  if (node === curves.length) return { ...path, curves: without(curves, node - 1) };
  const before = cubicsOf(path)[node - 1]!;
  const after = curves[node]!;
  const back = distance(before.secondControl, before.end);
  const ahead = distance(before.end, after.firstControl);
  // A node with a control point drawn in has no share of its own; the reach of the others stays bounded.
  const share = back + ahead === 0 ? 1 / 2 : Math.min(0.9, Math.max(0.1, back / (back + ahead)));
  const whole: Curve = {
    firstControl: between(before.start, before.firstControl, 1 / share),
    secondControl: between(after.end, after.secondControl, 1 / (1 - share)),
    end: after.end,
  };
  return { ...path, curves: replaced(without(curves, node), node - 1, whole) };
}

/** A node at another place. The control points on both sides of it go along. */
export function moveNode(path: PathShape, node: number, to: Readonly<Position>): PathShape {
  const from = node === 0 ? path.start : path.curves[node - 1]?.end;
  if (from === undefined) return path;
  const shift = (point: Position) => movePoint(point, [to[0] - from[0], to[1] - from[1]]);
  return {
    ...path,
    start: node === 0 ? [...to] : path.start,
    curves: path.curves.map((curve, i) => ({
      firstControl: i === node ? shift(curve.firstControl) : curve.firstControl,
      secondControl: i === node - 1 ? shift(curve.secondControl) : curve.secondControl,
      end: i === node - 1 ? [...to] : curve.end,
    })),
  };
}

/** A control point at another place; all else stays. */
export function moveControl(
  path: PathShape,
  curve: number,
  control: 'firstControl' | 'secondControl',
  to: Readonly<Position>,
): PathShape {
  return {
    ...path,
    curves: path.curves.map((one, i) => (i === curve ? { ...one, [control]: [...to] } : one)),
  };
}

function curveOf({ firstControl, secondControl, end }: Record<keyof Curve, Place>): Curve {
  return { firstControl: [...firstControl], secondControl: [...secondControl], end: [...end] };
}
