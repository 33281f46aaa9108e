/** A stretch of a look as a cloth: a row of levels for each part of it, and the current within each part. */
import { borrowFrame, borrowLevels, stillMoment } from '../../../engine/look/frame.ts';
import type { Score, ScoredClip } from '../../../engine/look/score.ts';
import type { ClipPosition } from './protocol.ts';

/** Beyond this many ticks a row looks at its first frame only, so that a look of hours is woven in seconds. */
const mostTicks = 6000;

export interface WeavePlan {
  readonly look: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly rows: number;
  readonly brightness: number;
}

export interface WovenRow {
  readonly row: number;
  /** Borrowed: good until the next row. */
  readonly levels: Uint8Array;
}

/** When row r begins; row `rows` is the end of the stretch. */
function timeOf({ fromMs, toMs, rows }: WeavePlan, row: number): number {
  return fromMs + Math.floor((row * (toMs - fromMs)) / rows);
}

/**
 * Row r is the frame at fromMs + floor(r * (toMs - fromMs) / rows).
 * @param firstRow where to begin; after the last row the first one follows
 */
export function* weaveRows(
  score: Score,
  plan: WeavePlan,
  firstRow = 0,
  count = plan.rows,
): Generator<WovenRow, void> {
  for (let i = 0; i < count; i++) {
    const row = (firstRow + i) % plan.rows;
    yield { row, levels: borrowLevels(score, stillMoment(plan.look, timeOf(plan, row), plan.brightness)) };
  }
}

/** The highest current within each row's stretch of time, row by row; null wherever it may be interrupted. */
export function* weaveCurrents(score: Score, plan: WeavePlan): Generator<number | null, void> {
  const tick = score.piece.tickMilliseconds;
  const everyTick = (plan.toMs - plan.fromMs) / tick <= mostTicks;
  const milliampsAt = (ms: number) =>
    borrowFrame(score, stillMoment(plan.look, ms, plan.brightness)).milliamps;
  for (let row = 0; row < plan.rows; row++) {
    const start = timeOf(plan, row);
    const end = timeOf(plan, row + 1);
    let peak = milliampsAt(start);
    if (everyTick) {
      for (let ms = (Math.floor(start / tick) + 1) * tick; ms < end; ms += tick) {
        yield null;
        peak = Math.max(peak, milliampsAt(ms));
      }
    }
    yield peak;
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
