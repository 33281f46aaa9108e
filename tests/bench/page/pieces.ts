/** Pieces as large as a maker may bring: every track lights every pixel, all the time. */
import type { PieceInput } from '../../../engine/piece/schema.ts';

/** From quick to slow ones, so that no single pattern decides. */
const patterns = [
  'wake/1',
  'tide/1',
  'ribbon/1',
  'procession/1',
  'millrace/1',
  'dew/1',
  'brazier/1',
  'sleeper/1',
];
const blends = ['normal', 'screen', 'lighten', 'plus-lighter'] as const;
const lookMilliseconds = 20_000;
const pixelsARun = 50;

/**
 * @param pixels a multiple of 50
 * @returns a piece with one look of eight tracks
 */
export function largePiece(pixels: number): PieceInput {
  const runs = Array.from({ length: pixels / pixelsARun }, (_, row) => ({
    name: `row ${row + 1}`,
    flat: {
      kind: 'straight' as const,
      count: pixelsARun,
      start: [0, row * 12] as [number, number],
      pitchMillimetres: 10,
    },
  }));
  return {
    version: 2,
    name: `Pier of ${pixels}`,
    board: 'rp2040',
    lines: [{ pin: 6, part: 'ws2812b', runs }],
    // So much that the limiter lets all of it shine: dark pixels would cost the picture nothing.
    supply: { limitMilliamps: 20_000 },
    looks: [
      {
        name: 'All the lanterns',
        lengthMilliseconds: lookMilliseconds,
        tracks: patterns.map((pattern, track) => ({
          clips: [
            {
              pattern,
              lengthMilliseconds: lookMilliseconds,
              opacity: 255 - 20 * track,
              blend: blends[track % blends.length]!,
            },
          ],
        })),
      },
    ],
  };
}
