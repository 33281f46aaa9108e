/**
 * A path as a hand works on it: nodes with two handles each, smooth or with a corner. A path that ends where
 * it begins is closed there, and has one node for both. Every function gives a new path.
 */
import { removeNode as dropNode, moveNode as shiftNode } from '../../../../engine/edit/geometry/path.ts';
import { between, distance, type Place, pointOnCubic } from '../../../../engine/layout/cubic.ts';
import { cubicsOf, type PathShape } from '../../../../engine/layout/path.ts';
import { nearestParameter } from './cubic.ts';

export interface Node {
  readonly at: Place;
  /** Towards the node before; on the node itself where there is none. */
  readonly back: Place;
  /** Towards the node after; likewise. */
  readonly ahead: Place;
}

export type Handle = 'back' | 'ahead';
export type Line = Pick<PathShape, 'start' | 'curves'>;

export function isClosed({ start, curves }: Line): boolean {
  const [x, y] = curves.at(-1)!.end;
  return x === start[0] && y === start[1];
}

/** In order along the path; the end of a closed one is its first node. */
export function nodesOf(line: Line): Node[] {
  const { start, curves } = line;
  const closed = isClosed(line);
  const first: Node = {
    at: start,
    back: closed ? curves.at(-1)!.secondControl : start,
    ahead: curves[0]!.firstControl,
  };
  const others = curves.map(({ secondControl, end }, i): Node => {
    return { at: end, back: secondControl, ahead: curves[i + 1]?.firstControl ?? end };
  });
  return [first, ...(closed ? others.slice(0, -1) : others)];
}

/** Handles go where their node goes. */
export function moveNode(path: PathShape, node: number, to: Place): PathShape {
  const moved = shiftNode(path, node, [...to]);
  return node === 0 && isClosed(path) ? shiftNode(moved, path.curves.length, [...to]) : moved;
}

/** On a smooth node the other handle turns along, and keeps its length. */
export function moveHandle(path: PathShape, node: number, handle: Handle, to: Place): PathShape {
  const before = nodesOf(path)[node]!;
  const other = opposite[handle];
  const follows = isSmooth(before) && { [other]: across(before.at, to, distance(before.at, before[other])) };
  return withHandles(path, node, { [handle]: to, ...follows });
}

const opposite: Readonly<Record<Handle, Handle>> = { back: 'ahead', ahead: 'back' };

/** So far from the node, on the other side than a spot. */
function across(at: Place, spot: Place, length: number): Place {
  const reach = distance(at, spot);
  return reach === 0 ? at : between(at, spot, -length / reach);
}

/** Tells a curve with its control points at one node exchanged. */
function withHandles(path: PathShape, node: number, handles: Partial<Record<Handle, Place>>): PathShape {
  const { length } = path.curves;
  const arriving = node === 0 ? (isClosed(path) ? length - 1 : undefined) : node - 1;
  const { back, ahead } = handles;
  return {
    ...path,
    curves: path.curves.map((curve, i) => ({
      ...curve,
      ...(ahead !== undefined && i === node && { firstControl: [...ahead] }),
      ...(back !== undefined && i === arriving && { secondControl: [...back] }),
    })),
  };
}

/** About a twentieth of a degree: rounding of files keeps a node smooth, a hand that means a corner does not. */
const bend = 1e-3;

/** Whether the curve goes through the node without a corner; a node with a handle drawn in has one. */
export function isSmooth({ at, back, ahead }: Node): boolean {
  const [bx, by] = [at[0] - back[0], at[1] - back[1]];
  const [ax, ay] = [ahead[0] - at[0], ahead[1] - at[1]];
  const lengths = Math.hypot(bx, by) * Math.hypot(ax, ay);
  if (lengths === 0) return false;
  return bx * ax + by * ay > 0 && Math.abs(bx * ay - by * ax) <= bend * lengths;
}

/** Handles in line with both neighbours, each a third as long as the way to its own. */
export function smoothNode(path: PathShape, node: number): PathShape {
  const spots = nodesOf(path).map(({ at }) => at);
  return withHandles(path, node, smoothHandles(spots, node, isClosed(path)));
}

/** Handles straight towards the neighbours. */
export function cornerNode(path: PathShape, node: number): PathShape {
  const spots = nodesOf(path).map(({ at }) => at);
  const { before, after } = neighbours(spots, node, isClosed(path));
  const at = spots[node]!;
  return withHandles(path, node, {
    ...(before && { back: between(at, before, 1 / 3) }),
    ...(after && { ahead: between(at, after, 1 / 3) }),
  });
}

interface Neighbours {
  readonly before: Place | undefined;
  readonly after: Place | undefined;
}

function neighbours(spots: readonly Place[], node: number, closed: boolean): Neighbours {
  if (closed) return { before: spots.at(node - 1), after: spots[(node + 1) % spots.length] };
  return { before: spots[node - 1], after: spots[node + 1] };
}

function smoothHandles(spots: readonly Place[], node: number, closed: boolean): Record<Handle, Place> {
  const at = spots[node]!;
  const { before, after } = neighbours(spots, node, closed);
  const from = before ?? at;
  const to = after ?? at;
  const way = distance(from, to);
  const along = (length: number): Place =>
    way === 0 ? at : [at[0] + ((to[0] - from[0]) * length) / way, at[1] + ((to[1] - from[1]) * length) / way];
  return { back: along(-distance(at, from) / 3), ahead: along(distance(at, to) / 3) };
}

/** A smooth line through two spots or more. */
export function lineThrough(spots: readonly Place[], closed: boolean): Line {
  const handles = spots.map((_, i) => smoothHandles(spots, i, closed));
  const ends = closed ? [...spots.slice(1), spots[0]!] : spots.slice(1);
  return {
    start: [...spots[0]!],
    curves: ends.map((end, i) => ({
      firstControl: [...handles[i]!.ahead],
      secondControl: [...handles[(i + 1) % spots.length]!.back],
      end: [...end],
    })),
  };
}

/** As few as can be taken out of: two of an open path; of a closed one, so that it stays a way round. */
export function canLoseNode(path: PathShape): boolean {
  return path.curves.length > (isClosed(path) ? 2 : 1);
}

/** The path without a node. A closed one stays closed, and begins at its next node if the first one goes. */
export function removeNode(path: PathShape, node: number): PathShape {
  if (!canLoseNode(path)) return path;
  if (node > 0 || !isClosed(path)) return dropNode(path, node);
  const [first, ...others] = path.curves;
  const turned: PathShape = { ...path, start: first!.end, curves: [...others, first!] };
  return dropNode(turned, path.curves.length - 1);
}

export interface Footing {
  readonly curve: number;
  /** Parameter of the curve, 0 to 1. */
  readonly at: number;
  readonly millimetresAway: number;
}

/** Where on the line a spot lies nearest. */
export function nearestOn(line: Line, spot: Place): Footing {
  const footings = cubicsOf(line).map((cubic, curve) => {
    const at = nearestParameter(cubic, spot);
    return { curve, at, millimetresAway: distance(pointOnCubic(cubic, at), spot) };
  });
  return footings.reduce((best, next) => (next.millimetresAway < best.millimetresAway ? next : best));
}
