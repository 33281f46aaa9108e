/** What a pattern at its defaults takes on the pixels of the open piece: current, and time of its board. */
import { clipMilliseconds } from '../../../codegen/estimate/clip.ts';
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { scoreWith } from './sample-strip.ts';
import { swatchMilliseconds } from './swatch-size.ts';

export interface SwatchWeight {
  /** Mean of frames spread evenly over eight seconds, on all pixels, the limiter included. */
  readonly milliamps: number;
  /** The limiter dimmed some of them. */
  readonly limited: boolean;
  /** To draw one frame, by estimate; null on boards for which there is none. */
  readonly milliseconds: number | null;
}

/** Patterns repeat after seconds, so every fifth of a second tells enough. */
const samples = 40;

/** Null for a pattern that cannot be played on this piece. */
export function* weigh(
  piece: Piece,
  pattern: string,
  brightness: number,
): Generator<void, SwatchWeight | null> {
  const score = scoreWith(piece, pattern);
  if (score === null) return null;
  let sum = 0;
  let limited = false;
  for (let at = 0; at < samples; at++) {
    const frame = borrowFrame(score, stillMoment(0, (at * swatchMilliseconds) / samples, brightness));
    sum += frame.milliamps;
    limited ||= frame.limited;
    yield;
  }
  const clip = score.looks[0]!.clips[0]!;
  return { milliamps: sum / samples, limited, milliseconds: clipMilliseconds(piece.board, clip) };
}
