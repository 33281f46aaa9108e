/** Frames as a recording holds them, made up for tests of what is read off them. */

import type { RecordedFrame } from '../../codegen/rehearse/recording.ts';
import type { Moment } from '../../engine/look/moment.ts';

export const hertz = 16_000_000;

export function momentWith(changes: Partial<Moment>): Moment {
  return {
    look: 0,
    ms: 0,
    uptimeMs: 0,
    brightness: 64,
    blackout: false,
    paused: false,
    leaving: null,
    ...changes,
  };
}

/** A frame whose moment was written when its uptime says so, unless a cycle is given. */
export function frameAt(moment: Partial<Moment>, changes: Partial<RecordedFrame> = {}): RecordedFrame {
  const whole = momentWith(moment);
  const momentCycle = changes.momentCycle ?? whole.uptimeMs * 16_000;
  return {
    moment: whole,
    momentCycle,
    startCycle: momentCycle + 1_000,
    endCycle: momentCycle + 2_000,
    bits: 24,
    bytes: Uint8Array.of(1, 2, 3),
    ...changes,
  };
}
