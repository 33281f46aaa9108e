/** What a rehearsal tells, and what is wrong with it in plain words. */
import type { PlayerEvent } from '../../engine/controls/player.ts';
import type { Diagnostic } from '../../engine/diagnostic.ts';
import type { ChipName } from '../../engine/parts/chips.ts';
import type { Mismatch } from './compare.ts';
import type { OutsidePulse, PulseRecord } from './wire.ts';

export interface RehearsalReport {
  readonly board: ChipName;
  readonly frames: number;
  /** Frames on the wire that are not what the engine draws for the same moment. */
  readonly mismatches: number;
  readonly pulses: PulseRecord['pulses'];
  readonly clockErrorPercent: number;
  readonly framesPerSecond: number;
  /** From the moment to the first edge of its frame: drawing, output stage and looking at the buttons. */
  readonly cyclesPerPixel: number;
  readonly flashBytes: number;
  /** Static variables. */
  readonly ramBytes: number;
  /** On top of them, at its deepest. */
  readonly stackBytes: number;
  readonly trace: readonly PlayerEvent[];

  readonly freeRamBytes: number;
  readonly pulsesOutside: number;
  readonly milliseconds: number;
  readonly clockAheadMilliseconds: readonly [min: number, max: number];
  readonly firstMismatches: readonly Mismatch[];
  readonly firstPulsesOutside: readonly OutsidePulse[];
  /** The looks that were on, in the order of the piece. */
  readonly looks: readonly RehearsedLook[];
}

export interface RehearsedLook {
  readonly name: string;
  readonly frames: number;
  readonly framesPerSecond: number;
  readonly cyclesPerPixel: number;
}

const allowedClockErrorPercent = 0.5;
/** In a shorter run, the millisecond that the clock is counted in weighs too much. */
const clockJudgedFromMilliseconds = 5_000;

/** Empty if the sketch did what it should. */
export function rehearsalFaults(report: RehearsalReport): Diagnostic[] {
  const faults: Diagnostic[] = [];
  const fault = (code: string, message: string, advice: string) =>
    faults.push({ code, severity: 'error', message, advice });

  if (report.frames === 0) {
    fault(
      'no-frames',
      'The sketch sent no whole frame.',
      'Rehearse for a longer time, and look whether the data pin of the sketch is that of the piece.',
    );
  }
  const mismatch = report.firstMismatches[0];
  if (mismatch !== undefined) {
    fault(
      'frame-mismatch',
      `${report.mismatches} of ${report.frames} frames differ from the picture, the first at ` +
        `${mismatch.moment.uptimeMs} ms in byte ${mismatch.byte}: ${mismatch.sent ?? 'nothing'} was sent, ` +
        `${mismatch.expected ?? 'nothing'} is right.`,
      'Undo edits to the sketch below the line of the machinery; if there are none, this is a fault of ours.',
    );
  }
  const outside = report.firstPulsesOutside[0];
  if (outside !== undefined) {
    fault(
      'pulse-outside',
      `${report.pulsesOutside} pulses are outside the datasheet's windows, the first a ` +
        `${outside.kind.toUpperCase()} of ${outside.nanoseconds} ns in frame ${outside.frame}, bit ${outside.bit}.`,
      'Undo edits to the part of the sketch that sends the pixels.',
    );
  }
  if (
    report.milliseconds >= clockJudgedFromMilliseconds &&
    report.clockErrorPercent > allowedClockErrorPercent
  ) {
    fault(
      'clock-off',
      `The sketch's clock is off by ${report.clockErrorPercent.toFixed(2)} %.`,
      'Keep my_code() short, and let nothing in it switch interrupts off.',
    );
  }
  if (report.freeRamBytes <= 0) {
    fault(
      'stack-overflow',
      `The stack of ${report.stackBytes} bytes has grown into the variables, which take ${report.ramBytes}.`,
      'Use fewer pixels or fewer looks with dissolves, which need a second picture in memory.',
    );
  }
  return faults;
}
