import { pixelPlaces } from '../../layout/shapes.ts';
import type { Piece, Run } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import type { Side } from '../kinds/runs.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** How far each edge or middle line of a box is from that of another, to the right and up. */
const offsets = {
  left: (box: Box, all: Box) => [all.left - box.left, 0],
  right: (box: Box, all: Box) => [all.right - box.right, 0],
  centre: (box: Box, all: Box) => [(all.left + all.right - box.left - box.right) / 2, 0],
  top: (box: Box, all: Box) => [0, all.top - box.top],
  bottom: (box: Box, all: Box) => [0, all.bottom - box.bottom],
  middle: (box: Box, all: Box) => [0, (all.bottom + all.top - box.bottom - box.top) / 2],
} as const satisfies Record<string, (box: Box, all: Box) => readonly [number, number]>;

export type Alignment = keyof typeof offsets;

/** Moves runs so that their pixels begin, end or centre where those of all of them do. */
export function alignRuns(piece: Piece, side: Side, runs: readonly string[], to: Alignment): Edit {
  const chosen = piece.lines.flatMap((line) => line.runs).filter(({ name }) => runs.includes(name));
  const boxes = chosen.map((run) => boxOf([run], side));
  const all = boxOf(chosen, side);
  const moves = chosen.map(({ name }, i): Edit => {
    const [x, y] = offsets[to](boxes[i]!, all);
    return { kind: 'move-runs', side, runs: [name], by: [x, y] };
  });
  return together(`Align ${runs.length} runs`, moves);
}

/** Around the centres of the pixels. */
function boxOf(runs: readonly Run[], side: Side): Box {
  const places = runs.flatMap((run) => pixelPlaces(run[side] ?? run.flat));
  const box = {
    left: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    bottom: Number.POSITIVE_INFINITY,
    top: Number.NEGATIVE_INFINITY,
  };
  for (const { x, y } of places) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.bottom = Math.min(box.bottom, y);
    box.top = Math.max(box.top, y);
  }
  return box;
}
