/** What a piece draws, look by look. */
import { borrowFrame, stillMoment } from '../look/frame.ts';
import type { Score } from '../look/score.ts';
import { LoopMeter } from './loop-meter.ts';
import { type NamedLookPower, type PowerWarning, powerWarnings } from './warnings.ts';

export interface PowerReport {
  readonly looks: readonly NamedLookPower[];
  /** Needs to know the cells or the power bank; null until a piece can tell. */
  readonly runtimeHours: null | { readonly low: number; readonly typical: number; readonly high: number };
  readonly warnings: readonly PowerWarning[];
}

/**
 * Figures of every look over one loop at the start brightness, one frame a tick.
 *
 * The loop is the first one after the look was entered, played to its end, with nothing dissolving into
 * it: a timed move-on that leaves earlier is not looked at, and an endless clip is seen with what it does
 * in that first loop, while later loops may draw more or less.
 */
export function reportPower(score: Score): PowerReport {
  const looks = score.looks.map((look, index) => meterLook(score, look.name, index));
  return { looks, runtimeHours: null, warnings: powerWarnings(score, looks) };
}

function meterLook(score: Score, name: string, index: number): NamedLookPower {
  const { tickMilliseconds, output, supply } = score.piece;
  const meter = new LoopMeter(score.looks[index]!.lengthMilliseconds, tickMilliseconds, supply.volts);
  for (let ms = meter.nextMs; ms !== null; ms = meter.nextMs) {
    meter.take(borrowFrame(score, stillMoment(index, ms, output.startBrightness)));
  }
  return { name, ...meter.report() };
}
