/**
 * From a score to one readable C++ file: a sketch for a chip, or the same player as a program for the desk.
 * Same input, same bytes.
 */
import { type Checked, type Diagnostic, hasErrors } from '../engine/diagnostic.ts';
import type { Score } from '../engine/look/score.ts';
import { type ChipName, chips } from '../engine/parts/chips.ts';
import { reportPower } from '../engine/power/report.ts';
import { cautionsFor } from '../engine/safety/cautions.ts';
import { driverFor } from './drivers/driver.ts';
import { type Estimate, estimateSketch } from './estimate/estimate.ts';
import { checkRoom } from './estimate/room.ts';
import { transliterate } from './names.ts';
import { printFile } from './player/file.ts';
import type { LookFigures } from './player/identity.ts';
import { myCodeOf } from './player/my-code.ts';
import { planSketch } from './player/plan.ts';

export interface Sketch {
  /** `NAME.ino` for a chip, `NAME.cpp` for the host. */
  readonly fileName: string;
  readonly text: string;
  readonly dataPins: readonly number[];
  readonly buttonPins: readonly number[];
  /** Null on the desk, which has room enough. */
  readonly estimate: Estimate | null;
}

export interface SketchOptions {
  /** Text of an older sketch, whose `my_code` is kept. */
  readonly previous?: string;
  /** Figures for the head of the file, where they are known already; calculated where they are left out. */
  readonly power?: readonly LookFigures[];
}

/** Errors: `board-not-ready`, `too-little-ram`, `too-little-flash`. Warnings: `my-code-not-found`. */
export function generateSketch(score: Score, chip: ChipName, options: SketchOptions = {}): Checked<Sketch> {
  const { piece } = score;
  const line = piece.lines[0]!;
  const driver = driverFor(chip, line.part, [line.pin]);
  if (driver === undefined) return { diagnostics: [boardNotReady(chip)] };

  const plan = planSketch({ score, chip, driver });
  const estimate = chip === 'host' ? null : estimateSketch(plan);
  const tight = estimate === null ? [] : checkRoom(chip, estimate, plan.tables.bytes);
  if (hasErrors(tight)) return { diagnostics: tight };

  // A program for the desk has no place for a maker's code.
  const kept = myCodeOf(chip === 'host' ? undefined : options.previous);
  const facts = {
    power: options.power ?? reportPower(score).looks,
    cautions: cautionsFor(piece).map(({ short }) => short),
    size: estimate === null ? '' : sizeText(estimate),
  };
  return {
    value: {
      fileName: `${transliterate(piece.name) || 'piece'}.${chip === 'host' ? 'cpp' : 'ino'}`,
      text: printFile(plan, facts, kept.body),
      dataPins: piece.lines.map(({ pin }) => pin),
      buttonPins: piece.controls.buttons.map(({ pin }) => pin),
      estimate,
    },
    diagnostics: [...tight, ...kept.diagnostics],
  };
}

function sizeText({ flashBytes, ramBytes, framesPerSecond }: Estimate): string {
  const kilobytes = (flashBytes / 1024).toFixed(1);
  return `${ramBytes} bytes of RAM; by estimate ${kilobytes} KB of program and ${Math.floor(framesPerSecond)} frames a second in the busiest look`;
}

function boardNotReady(chip: ChipName): Diagnostic {
  return {
    code: 'board-not-ready',
    severity: 'error',
    message: `Sketches for ${chips[chip].title} cannot be made yet.`,
    advice: 'Choose atmega328p, or host to try the piece on a desk.',
  };
}
