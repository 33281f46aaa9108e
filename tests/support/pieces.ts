/** Small pieces for tests: as a file would say them, with the schema's defaults filled in. */
import { type Piece, type PieceInput, pieceSchema } from '../../engine/piece/schema.ts';

/** A landing stage with eight lanterns, one look and one button, changed as a test needs it. */
export function pieceWith(changes: Partial<PieceInput> = {}): Piece {
  return pieceSchema.parse({
    version: 2,
    name: 'Landing stage',
    board: 'atmega328p',
    lines: [lineOf(8)],
    looks: [{ name: 'Dusk', lengthMilliseconds: 1000, tracks: [] }],
    ...changes,
  } satisfies PieceInput);
}

export function lineOf(count: number, hidden: number[] = []): PieceInput['lines'][number] {
  return {
    pin: 6,
    part: 'ws2812b',
    runs: [
      {
        name: 'rail',
        flat: { kind: 'straight', count, start: [0, 0], pitchMillimetres: 20 },
        hidden,
      },
    ],
  };
}
