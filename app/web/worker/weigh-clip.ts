/** What one clip takes of its look: the current of its light, and time of the board's frame. */
import { clipMilliseconds } from '../../../codegen/estimate/clip.ts';
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import type { Score } from '../../../engine/look/score.ts';
import type { ClipPosition } from './protocol.ts';
import { onlyClip } from './weave.ts';

export interface ClipWeight {
  /**
   * Mean of frames spread evenly over one loop of the look, in which nothing but the clip is lit, as it is
   * faded and dimmed; less what the line draws in the dark.
   */
  readonly milliamps: number;
  /** To draw one frame of it, by estimate; null on boards for which there is none. */
  readonly milliseconds: number | null;
}

const samples = 200;

/** Null where there is no such clip. */
export function* weighClip(
  score: Score,
  at: ClipPosition,
  brightness: number,
): Generator<void, ClipWeight | null> {
  const alone = onlyClip(score, at);
  const [clip] = alone.looks[at.look]?.clips ?? [];
  if (clip === undefined) return null;
  const { lengthMilliseconds } = alone.looks[at.look]!;
  const dark = borrowFrame(alone, { ...stillMoment(at.look, 0, brightness), blackout: true }).milliamps;
  let sum = 0;
  for (let sample = 0; sample < samples; sample++) {
    const ms = Math.floor((sample * lengthMilliseconds) / samples);
    sum += borrowFrame(alone, stillMoment(at.look, ms, brightness)).milliamps - dark;
    yield;
  }
  return { milliamps: sum / samples, milliseconds: clipMilliseconds(score.piece.board, clip) };
}
