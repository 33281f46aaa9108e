/** Runs the text of a sketch on an emulated chip and holds it against the score it was made from. */
import type { Checked, Diagnostic } from '../../engine/diagnostic.ts';
import { borrowFrame } from '../../engine/look/frame.ts';
import type { Score } from '../../engine/look/score.ts';
import { chips } from '../../engine/parts/chips.ts';
import { contactChanges, type Press } from './bounce.ts';
import { buildFirmware, type Firmware } from './build.ts';
import { type ChipRecording, runChip } from './chip.ts';
import { checkClock } from './clock.ts';
import { compareFrames } from './compare.ts';
import { lookPace, pace } from './pace.ts';
import type { RehearsalReport } from './report.ts';
import { traceOf } from './trace.ts';

export interface RehearsalOptions {
  /** Emulated time from power-up; 10,000 if left out. */
  readonly forMilliseconds?: number;
  readonly presses?: readonly Press[];
  /** How the contacts bounce. */
  readonly bounceSeed?: number;
  /** Index of the look to begin with, instead of the sketch's own first. */
  readonly startLook?: number;
}

const board = 'atmega328p';
const defaultMilliseconds = 10_000;
const keptMismatches = 5;

/** Errors: `compiler-missing`, `sketch-does-not-compile`, `no-start-look`, `no-shown`. */
export async function rehearseText(
  score: Score,
  sketchText: string,
  options: RehearsalOptions = {},
): Promise<Checked<RehearsalReport>> {
  const text = beginWith(sketchText, options.startLook);
  if (text === undefined) return { diagnostics: [noStartLook] };
  const { value: firmware, diagnostics } = await buildFirmware(text);
  if (firmware === undefined) return { diagnostics };
  const recording = runChip(firmware, {
    forMilliseconds: options.forMilliseconds ?? defaultMilliseconds,
    dataPin: score.piece.lines[0]!.pin,
    buttonPins: score.piece.controls.buttons.map(({ pin }) => pin),
    contacts: contactChanges(options.presses ?? [], options.bounceSeed ?? 1),
  });
  if (recording === undefined) return { diagnostics: [noShown] };
  return { value: reportOf(score, firmware, recording), diagnostics: [] };
}

/** The settings of a sketch name the look that it begins with. */
function beginWith(text: string, look: number | undefined): string | undefined {
  if (look === undefined) return text;
  const setting = /(\bSTART_LOOK = )\d+;/;
  return setting.test(text) ? text.replace(setting, `$1${look};`) : undefined;
}

function reportOf(score: Score, firmware: Firmware, recording: ChipRecording): RehearsalReport {
  const { frames } = recording;
  const pixels = score.pixels.length;
  const mismatches = compareFrames(frames, (moment) => borrowFrame(score, moment).drive);
  const lookNames = score.looks.map(({ name }) => name);
  const { flashBytes, ramBytes } = firmware;
  const { stackBytes, milliseconds } = recording;
  return {
    board,
    frames: frames.length,
    mismatches: mismatches.length,
    pulses: recording.pulses,
    ...checkClock(recording),
    ...pace(recording, pixels),
    flashBytes,
    ramBytes,
    stackBytes,
    trace: traceOf(
      frames.map(({ moment }) => moment),
      lookNames,
      recording.settings,
    ),
    freeRamBytes: chips[board].ramBytes! - ramBytes - stackBytes,
    pulsesOutside: recording.outsideCount,
    milliseconds,
    firstMismatches: mismatches.slice(0, keptMismatches),
    firstPulsesOutside: recording.outside,
    looks: lookPace(recording, pixels, lookNames),
  };
}

const noStartLook: Diagnostic = {
  code: 'no-start-look',
  severity: 'error',
  message: 'The sketch has no setting START_LOOK, so it cannot begin with another look.',
  advice: 'Generate the sketch anew.',
};

const noShown: Diagnostic = {
  code: 'no-shown',
  severity: 'error',
  message: 'The sketch has no global variable "shown" of type Moment, so its frames cannot be checked.',
  advice: 'Generate the sketch anew, or put the variable back.',
};
