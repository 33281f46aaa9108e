/** Figures of one loop of a look, from the current of its frames. */

export interface LookPower {
  readonly averageMilliamps: number;
  readonly peakMilliamps: number;
  /** The smallest mean over any ten seconds while the look goes round and round. */
  readonly lowestTenSecondMilliamps: number;
  readonly energyPerLoopMilliwattHours: number;
  /** Share of the frames that the limiter dims, 0..1. */
  readonly limitedShare: number;
}

const windowMilliseconds = 10_000;
const millisecondsPerHour = 3_600_000;

/** Takes the frames of one loop, one a tick from 0 on; in slices, if a page has to stay alive meanwhile. */
export class LoopMeter {
  private readonly samples: Float64Array;
  private taken = 0;
  private limited = 0;

  constructor(
    private readonly lengthMilliseconds: number,
    private readonly tickMilliseconds: number,
    private readonly volts: number,
  ) {
    this.samples = new Float64Array(Math.ceil(lengthMilliseconds / tickMilliseconds));
  }

  /** Milliseconds of the look at which the next frame is wanted, or null when the loop is complete. */
  get nextMs(): number | null {
    return this.taken < this.samples.length ? this.taken * this.tickMilliseconds : null;
  }

  take(frame: { readonly milliamps: number; readonly limited: boolean }): void {
    this.samples[this.taken] = frame.milliamps;
    this.taken += 1;
    if (frame.limited) this.limited += 1;
  }

  /** Figures of a complete loop. */
  report(): LookPower {
    const { samples } = this;
    const averageMilliamps = sum(samples) / samples.length;
    const hours = this.lengthMilliseconds / millisecondsPerHour;
    return {
      averageMilliamps,
      peakMilliamps: samples.reduce((most, sample) => Math.max(most, sample), 0),
      lowestTenSecondMilliamps: lowestMean(samples, Math.ceil(windowMilliseconds / this.tickMilliseconds)),
      energyPerLoopMilliwattHours: averageMilliamps * this.volts * hours,
      limitedShare: this.limited / samples.length,
    };
  }
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

/**
 * The smallest mean of `length` samples in a row, where the first follows the last. A window longer than
 * the loop holds every sample equally often, and then some once more.
 */
function lowestMean(loop: Float64Array, length: number): number {
  const rounds = Math.floor(length / loop.length);
  const rest = length % loop.length;
  let window = sum(loop.subarray(0, rest));
  let lowest = window;
  for (let start = 1; start < loop.length; start++) {
    window += loop[(start + rest - 1) % loop.length]! - loop[start - 1]!;
    lowest = Math.min(lowest, window);
  }
  return (rounds * sum(loop) + lowest) / length;
}
