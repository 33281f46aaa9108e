/** One loop of a look as a cloth: a row of levels for each stretch of time, and the current within it. */
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import type { Score, ScoredClip } from '../../../engine/look/score.ts';
import type { ClipPosition } from './protocol.ts';

/** Beyond this many ticks a row looks at its first frame only, so that a look of hours is woven in seconds. */
const mostTicks = 6000;

export interface WeavePlan {
  readonly look: number;
  readonly rows: number;
  readonly brightness: number;
  /** Without it, a row's current is that of its first frame, which is quick. */
  readonly peaks: boolean;
}

export interface WovenRow {
  /** Borrowed: good until the next row. */
  readonly levels: Uint8Array;
  readonly peakMilliamps: number;
}

/** Row r is the frame at floor(r * length / rows). */
export function* weave(
  score: Score,
  { look, rows, brightness, peaks }: WeavePlan,
): Generator<WovenRow | null, void> {
  const { lengthMilliseconds } = score.looks[look]!;
  const tick = score.piece.tickMilliseconds;
  const everyTick = peaks && lengthMilliseconds / tick <= mostTicks;
  const levels = new Uint8Array(score.pixels.length * 3);
  const frameAt = (ms: number) => borrowFrame(score, stillMoment(look, ms, brightness));
  for (let row = 0; row < rows; row++) {
    const start = Math.floor((row * lengthMilliseconds) / rows);
    const end = Math.floor(((row + 1) * lengthMilliseconds) / rows);
    const first = frameAt(start);
    levels.set(first.levels);
    let peakMilliamps = first.milliamps;
    if (everyTick) {
      for (let ms = (Math.floor(start / tick) + 1) * tick; ms < end; ms += tick) {
        yield null;
        peakMilliamps = Math.max(peakMilliamps, frameAt(ms).milliamps);
      }
    }
    yield { levels, peakMilliamps };
  }
}

/** The score with one clip left, laid plainly on black: what that clip alone paints. */
export function soloScore(score: Score, at: ClipPosition): Score {
  return onlyClip(score, at, laidPlainly);
}

/** The score with one clip left, as it is or changed. */
export function onlyClip(
  score: Score,
  { look, track, clip }: ClipPosition,
  change = (it: ScoredClip) => it,
): Score {
  const isIt = (other: ScoredClip) => other.track === track && other.clip === clip;
  const looks = score.looks.map((other, index) => ({
    ...other,
    clips: index === look ? other.clips.filter(isIt).map(change) : [],
  }));
  return { ...score, looks };
}

function laidPlainly(clip: ScoredClip): ScoredClip {
  return { ...clip, opacity: 255, blend: 'normal', fadeInMilliseconds: 0, fadeOutMilliseconds: 0 };
}
