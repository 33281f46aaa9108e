/** Which pixel it is, as one would say it at the bench. */
import type { Piece } from '../../../engine/piece/schema.ts';
import type { PieceView } from '../worker/protocol.ts';

type Known = Pick<PieceView, 'runs' | 'positions' | 'hidden'>;

/** `rim, pixel 12`; behind the first run also its address: `badge, pixel 0 (36 on the line)`. */
export function pixelWords(piece: Piece, { runs, positions, hidden }: Known, pixel: number): string | null {
  const run = piece.lines.flatMap((line) => line.runs)[runs[pixel] ?? -1];
  const position = positions[pixel];
  // While an edit is on its way, the picture may be one step behind.
  if (run === undefined || position === undefined) return null;
  const address = position === pixel ? '' : ` (${pixel} on the line)`;
  return `${run.name}, pixel ${position}${address}${hidden[pixel] === 1 ? ', hidden' : ''}`;
}
