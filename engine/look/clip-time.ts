/** When a clip is on, how far it has come and how much of it shows: rules T2 to T5 and T9 of SPEC.md. */
import { limits } from '../piece/limits.ts';
import { unitMul } from './blend.ts';
import type { ScoredClip, ScoredLook } from './score.ts';

/** A look at one of its ticks. */
export interface LookTime {
  /** Milliseconds since the look was entered, a multiple of the tick. */
  readonly ms: number;
  /** The same since its present loop began. */
  readonly loopMs: number;
}

export function lookTimeAt(look: ScoredLook, ms: number, tickMilliseconds: number): LookTime {
  const tickMs = ms - (ms % tickMilliseconds);
  return { ms: tickMs, loopMs: tickMs % look.lengthMilliseconds };
}

/** Milliseconds since the clip began, or null while it is not on. An endless clip never ends. */
export function clipMsAt(clip: ScoredClip, time: LookTime): number | null {
  const ms = (clip.endless ? time.ms : time.loopMs) - clip.startMilliseconds;
  return ms >= 0 && (clip.endless || ms < clip.lengthMilliseconds) ? ms : null;
}

/**
 * Seconds in Q16.16. The time of an endless clip begins anew every nine hours, the longest that a look
 * can be: patterns are proved for that range, and nearly every period fits into it.
 */
export function clipSeconds(clipMs: number): number {
  const ms = clipMs % limits.lookMilliseconds;
  const rest = ms % 1000;
  return ((ms - rest) / 1000) * 65536 + Math.floor((rest * 65536) / 1000);
}

/** How far through the clip, Q2.14; an endless clip turns with its look. */
export function clipTurn(clip: ScoredClip, look: ScoredLook, time: LookTime, clipMs: number): number {
  return clip.endless
    ? Math.floor((time.loopMs * 16384) / look.lengthMilliseconds)
    : Math.floor((clipMs * 16384) / clip.lengthMilliseconds);
}

/** Opacity and fades together, 0..255. */
export function clipAmount(clip: ScoredClip, clipMs: number): number {
  const fadedIn = unitMul(clip.opacity, fade(clipMs, clip.fadeInMilliseconds));
  if (clip.endless) return fadedIn;
  return unitMul(fadedIn, fade(clip.lengthMilliseconds - clipMs, clip.fadeOutMilliseconds));
}

/** How much a fade lets through, this far from the end of the clip that it belongs to. */
function fade(ms: number, fadeMilliseconds: number): number {
  return ms >= fadeMilliseconds ? 255 : Math.floor((ms * 255) / fadeMilliseconds);
}
