/**
 * A curve as a hand works on it: nodes with two handles each. A handle that lies on its node is drawn in.
 * Every function gives a new curve; nodes count from 0 along it.
 */
import { between, type Cubic, cut, distance, nearestShare, pointOn, type Spot } from './cubic.ts';

export interface Node {
  readonly at: Spot;
  /** Towards the node before. */
  readonly back: Spot;
  /** Towards the node after. */
  readonly ahead: Spot;
}

export type Handle = 'back' | 'ahead';

export interface Curve {
  readonly nodes: readonly Node[];
  /** Whether a last piece leads from the last node to the first. */
  readonly closed: boolean;
}

/** Pieces in order; piece i begins at node i. */
export function piecesOf({ nodes, closed }: Curve): Cubic[] {
  return nodes.slice(0, closed ? undefined : -1).map((node, i) => {
    const next = nodes[(i + 1) % nodes.length]!;
    return { start: node.at, first: node.ahead, second: next.back, end: next.at };
  });
}

/** @param pieces one or more, each beginning where the one before ends; of a closed curve the last ends at the start */
export function curveOf(pieces: readonly Cubic[], closed: boolean): Curve {
  const nodes = pieces.map(({ start, first }, i): Node => {
    const before = pieces[i - 1] ?? (closed ? pieces.at(-1) : undefined);
    return { at: start, back: before?.second ?? start, ahead: first };
  });
  const { second, end } = pieces.at(-1)!;
  return { nodes: closed ? nodes : [...nodes, { at: end, back: second, ahead: end }], closed };
}

/** Handles go where their node goes. */
export function moveNode(curve: Curve, index: number, to: Spot): Curve {
  return withNode(curve, index, (node) => {
    const shift = ([x, y]: Spot): Spot => [x + to[0] - node.at[0], y + to[1] - node.at[1]];
    return { at: to, back: shift(node.back), ahead: shift(node.ahead) };
  });
}

/** On a smooth node the other handle turns along, and keeps its length. */
export function moveHandle(curve: Curve, index: number, handle: Handle, to: Spot): Curve {
  return withNode(curve, index, (node) => {
    const moved = { ...node, [handle]: to };
    const other = opposite[handle];
    return isSmooth(node)
      ? { ...moved, [other]: across(node.at, to, distance(node.at, node[other])) }
      : moved;
  });
}

const opposite: Readonly<Record<Handle, Handle>> = { back: 'ahead', ahead: 'back' };

/** So far from the node, on the other side than a spot. */
function across(at: Spot, spot: Spot, length: number): Spot {
  const reach = distance(at, spot);
  return reach === 0 ? at : between(at, spot, -length / reach);
}

/** About a twentieth of a degree: rounding of files keeps a node smooth, a hand that means a corner does not. */
const bend = 1e-3;

/** Whether the curve goes through the node without a corner; a node with a drawn-in handle has one. */
export function isSmooth({ at, back, ahead }: Node): boolean {
  const [bx, by] = [at[0] - back[0], at[1] - back[1]];
  const [ax, ay] = [ahead[0] - at[0], ahead[1] - at[1]];
  const lengths = Math.hypot(bx, by) * Math.hypot(ax, ay);
  if (lengths === 0) return false;
  return bx * ax + by * ay > 0 && Math.abs(bx * ay - by * ax) <= bend * lengths;
}

/** Handles in line with both neighbours, each as long as a third of the way to its own. */
export function smoothNode(curve: Curve, index: number): Curve {
  return withNode(curve, index, (node) => smoothed(node.at, neighbours(curve, index)));
}

/** Handles straight towards the neighbours. */
export function cornerNode(curve: Curve, index: number): Curve {
  const { before, after } = neighbours(curve, index);
  return withNode(curve, index, ({ at }) => ({
    at,
    back: before === undefined ? at : between(at, before, 1 / 3),
    ahead: after === undefined ? at : between(at, after, 1 / 3),
  }));
}

interface Neighbours {
  readonly before: Spot | undefined;
  readonly after: Spot | undefined;
}

function neighbours({ nodes, closed }: Curve, index: number): Neighbours {
  const at = (i: number) => (closed ? nodes.at(i % nodes.length) : nodes[i])?.at;
  return { before: at(index - 1), after: at(index + 1) };
}

function smoothed(at: Spot, { before, after }: Neighbours): Node {
  const from = before ?? at;
  const to = after ?? at;
  const way = distance(from, to);
  const along = (length: number): Spot =>
    way === 0 ? at : [at[0] + ((to[0] - from[0]) * length) / way, at[1] + ((to[1] - from[1]) * length) / way];
  return {
    at,
    back: before === undefined ? at : along(-distance(at, before) / 3),
    ahead: after === undefined ? at : along(distance(at, after) / 3),
  };
}

/** A smooth curve through two spots or more. */
export function curveThrough(spots: readonly Spot[], closed: boolean): Curve {
  const bare: Curve = { nodes: spots.map((at) => ({ at, back: at, ahead: at })), closed };
  return { nodes: spots.map((at, i) => smoothed(at, neighbours(bare, i))), closed };
}

/** Another node on a piece; the curve stays the same. */
export function addNode(curve: Curve, piece: number, share: number): Curve {
  const pieces = piecesOf(curve);
  return curveOf(
    [...pieces.slice(0, piece), ...cut(pieces[piece]!, share), ...pieces.slice(piece + 1)],
    curve.closed,
  );
}

/**
 * Takes a node out. The handles on either side grow by what its own tell of the shares, so that taking out
 * a node which `addNode` put in gives the very curve before. An end takes its piece along.
 */
export function removeNode(curve: Curve, index: number): Curve {
  const { nodes, closed } = curve;
  if (nodes.length <= 2) return curve;
  const kept = nodes.filter((_, i) => i !== index);
  const isEnd = !closed && (index === 0 || index === nodes.length - 1);
  if (isEnd) return { nodes: trimmedEnds(kept), closed };
  const { at, back, ahead } = nodes[index]!;
  const span = distance(at, back) + distance(at, ahead);
  const share = span === 0 ? 1 / 2 : Math.min(0.9, Math.max(0.1, distance(at, back) / span));
  const before = (index - 1 + nodes.length) % nodes.length;
  const after = (index + 1) % nodes.length;
  return {
    nodes: nodes
      .map((node, i) => ({
        ...node,
        ...(i === before && { ahead: between(node.at, node.ahead, 1 / share) }),
        ...(i === after && { back: between(node.at, node.back, 1 / (1 - share)) }),
      }))
      .filter((_, i) => i !== index),
    closed,
  };
}

/** Handles that lead nowhere are drawn in. */
function trimmedEnds(nodes: readonly Node[]): Node[] {
  return nodes.map((node, i) => ({
    at: node.at,
    back: i === 0 ? node.at : node.back,
    ahead: i === nodes.length - 1 ? node.at : node.ahead,
  }));
}

export interface Footing {
  readonly piece: number;
  readonly share: number;
  readonly millimetresAway: number;
}

/** Where on the curve a spot lies nearest. */
export function nearestOn(curve: Curve, spot: Spot): Footing {
  const footings = piecesOf(curve).map((cubic, piece) => {
    const share = nearestShare(cubic, spot);
    return { piece, share, millimetresAway: distance(pointOn(cubic, share), spot) };
  });
  return footings.reduce((best, next) => (next.millimetresAway < best.millimetresAway ? next : best));
}

function withNode(curve: Curve, index: number, change: (node: Node) => Node): Curve {
  return { ...curve, nodes: curve.nodes.map((node, i) => (i === index ? change(node) : node)) };
}
