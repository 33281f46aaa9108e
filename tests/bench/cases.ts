/** What is measured: every library pattern with its defaults, on a small piece and on a large one. */
import { clipSeconds } from '../../engine/look/clip-time.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import { libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';

export interface Case {
  /** `mist/1 60` */
  readonly name: string;
  readonly pattern: string;
  readonly pixels: number;
  readonly program: ClipProgram;
  readonly indices: Uint16Array;
  readonly places: Int16Array;
}

export const sizes = [60, 1000] as const;
const lookMilliseconds = 20_000;
/** Drawn in one measurement, a few milliseconds long. */
const pixelsEach = 120_000;

export const cases: readonly Case[] = sizes.flatMap((pixels) =>
  libraryPatterns.map((pattern) => caseOf(referenceOf(pattern), pixels)),
);

/** Frames of a measurement, one after the other in the look: their number follows from the pixels alone. */
export function framesOf({ pixels }: Case): number {
  return Math.ceil(pixelsEach / pixels);
}

/** What the frame of each number is drawn from. */
export const moments = Array.from({ length: Math.ceil(pixelsEach / Math.min(...sizes)) }, (_, frame) => {
  const ms = (frame * 20) % lookMilliseconds;
  return { time: clipSeconds(ms), turn: Math.floor((ms * 16384) / lookMilliseconds) };
});

function caseOf(pattern: string, pixels: number): Case {
  const piece: PieceInput = {
    version: 2,
    name: 'Long pier',
    board: 'host',
    lines: [
      {
        pin: 6,
        part: 'ws2812b',
        runs: [
          {
            name: 'pier',
            flat: { kind: 'grid', columns: 20, rows: pixels / 20, start: [0, 0], pitchMillimetres: 10 },
          },
        ],
      },
    ],
    looks: [
      {
        name: 'Dusk',
        lengthMilliseconds: lookMilliseconds,
        tracks: [{ clips: [{ pattern, lengthMilliseconds: lookMilliseconds }] }],
      },
    ],
  };
  const { program, zone } = prepareScore(checkPiece(piece).value!).value!.looks[0]!.clips[0]!;
  return {
    name: `${pattern} ${pixels}`,
    pattern,
    pixels,
    program,
    indices: Uint16Array.from(zone.entries, ({ index }) => index),
    places: zone.places,
  };
}
