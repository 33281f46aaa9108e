/** The power figures of all looks at any brightness, frame by frame. */
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import type { Score } from '../../../engine/look/score.ts';
import { LoopMeter } from '../../../engine/power/loop-meter.ts';
import { type NamedLookPower, type PowerWarning, powerWarnings } from '../../../engine/power/warnings.ts';

export interface Measured {
  readonly looks: readonly NamedLookPower[];
  readonly warnings: readonly PowerWarning[];
}

/** The same frames as `reportPower`, but it can be interrupted after each of them. */
export function* measure(score: Score, brightness: number): Generator<void, Measured> {
  const { tickMilliseconds, supply } = score.piece;
  const looks: NamedLookPower[] = [];
  for (const [index, { name, lengthMilliseconds }] of score.looks.entries()) {
    const meter = new LoopMeter(lengthMilliseconds, tickMilliseconds, supply.volts);
    for (let ms = meter.nextMs; ms !== null; ms = meter.nextMs) {
      meter.take(borrowFrame(score, stillMoment(index, ms, brightness)));
      yield;
    }
    looks.push({ name, ...meter.report() });
  }
  return { looks, warnings: powerWarnings(score, looks) };
}
