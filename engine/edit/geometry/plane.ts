/** Points of the plane moved, turned, scaled and mirrored. Millimetres, y up, degrees counter-clockwise. */

export type Position = [x: number, y: number];

/** A line to mirror at: through a point, in a direction. */
export interface Axis {
  readonly through: Readonly<Position>;
  readonly degrees: number;
}

export function movePoint([x, y]: Readonly<Position>, [dx, dy]: Readonly<Position>): Position {
  return [x + dx, y + dy];
}

/** Exact for quarter turns. */
export function turnPoint([x, y]: Readonly<Position>, about: Readonly<Position>, degrees: number): Position {
  const [cos, sin] = direction(degrees);
  const dx = x - about[0];
  const dy = y - about[1];
  return [about[0] + (dx * cos - dy * sin), about[1] + (dx * sin + dy * cos)];
}

export function scalePoint([x, y]: Readonly<Position>, about: Readonly<Position>, factor: number): Position {
  return [about[0] + (x - about[0]) * factor, about[1] + (y - about[1]) * factor];
}

/** Exact for upright, level and diagonal axes. */
export function mirrorPoint([x, y]: Readonly<Position>, { through, degrees }: Axis): Position {
  const [cos, sin] = direction(2 * degrees);
  const dx = x - through[0];
  const dy = y - through[1];
  return [through[0] + (dx * cos + dy * sin), through[1] + (dx * sin - dy * cos)];
}

/** The same direction in -180 (without) to 180. */
export function tidyDegrees(degrees: number): number {
  const turn = degrees % 360;
  if (turn > 180) return turn - 360;
  // Adding 0 turns -0 into 0, which a file would not tell apart.
  return turn <= -180 ? turn + 360 : turn + 0;
}

/** Cosine and sine, exact on the axes. */
function direction(degrees: number): readonly [cos: number, sin: number] {
  const quarters = (((degrees % 360) + 360) % 360) / 90;
  if (Number.isInteger(quarters)) return quarterTurns[quarters]!;
  const radians = quarters * (Math.PI / 2);
  return [Math.cos(radians), Math.sin(radians)];
}

const quarterTurns = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;
