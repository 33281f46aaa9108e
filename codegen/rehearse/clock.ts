/** How well the chip keeps time, although it is deaf while it sends. */
import type { Recording } from './recording.ts';

export interface ClockCheck {
  /**
   * By how much the chip's time runs fast or slow against the emulated cycles, between the first and the
   * last frame; the worse of its uptime and of its look time. 0 if there are fewer than two frames.
   */
  readonly clockErrorPercent: number;
  /** Uptime minus emulated time: the least and the greatest of all frames. */
  readonly clockAheadMilliseconds: readonly [min: number, max: number];
}

export function checkClock({ frames, hertz }: Pick<Recording, 'frames' | 'hertz'>): ClockCheck {
  const first = frames[0];
  const last = frames.at(-1);
  if (first === undefined || last === undefined || first === last) {
    return { clockErrorPercent: 0, clockAheadMilliseconds: [0, 0] };
  }
  const millisecondsAt = (cycle: number) => (cycle * 1000) / hertz;
  const real = millisecondsAt(last.momentCycle - first.momentCycle);
  const uptimeRate = (last.moment.uptimeMs - first.moment.uptimeMs) / real;
  const lookRate = uptimeRate * lookPerUptime(frames);
  const ahead = frames.map(({ moment, momentCycle }) => moment.uptimeMs - millisecondsAt(momentCycle));
  return {
    clockErrorPercent: 100 * Math.max(Math.abs(uptimeRate - 1), Math.abs(lookRate - 1)),
    clockAheadMilliseconds: [ahead.reduce((a, b) => Math.min(a, b)), ahead.reduce((a, b) => Math.max(a, b))],
  };
}

/** Look time over uptime, from pairs of frames between which a look simply went on; 1 if there is no such pair. */
function lookPerUptime(frames: Recording['frames']): number {
  let lookMs = 0;
  let uptimeMs = 0;
  frames.slice(1).forEach(({ moment }, i) => {
    const before = frames[i]!.moment;
    if (moment.look !== before.look || moment.ms < before.ms || moment.paused || before.paused) return;
    lookMs += moment.ms - before.ms;
    uptimeMs += moment.uptimeMs - before.uptimeMs;
  });
  return uptimeMs === 0 ? 1 : lookMs / uptimeMs;
}
