/** Words on lines of a drawing, left out where they would stand on each other. */
import type { Point } from '../../../../engine/layout/layout.ts';

interface LabelledLine {
  readonly from: Point;
  readonly to: Point;
  readonly words: string;
}

interface Label extends Point {
  readonly words: string;
}

/** Of a line of text at 12 pixels, about. */
const characterPixels = 6.6;
const heightPixels = 18;

/** In the middle of each line that is longer than its words, as long as none that came before is in the way. */
export function labelsApart(lines: readonly LabelledLine[]): Label[] {
  const placed: Label[] = [];
  for (const { from, to, words } of lines) {
    if (Math.hypot(to.x - from.x, to.y - from.y) < words.length * characterPixels + 16) continue;
    const label = { x: Math.round((from.x + to.x) / 2), y: Math.round((from.y + to.y) / 2), words };
    if (!placed.some((other) => touches(label, other))) placed.push(label);
  }
  return placed;
}

function touches(a: Label, b: Label): boolean {
  const width = ((a.words.length + b.words.length) / 2) * characterPixels + 6;
  return Math.abs(a.x - b.x) < width && Math.abs(a.y - b.y) < heightPixels;
}
