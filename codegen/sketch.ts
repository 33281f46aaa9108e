/**
 * From a score to one readable C++ file: a sketch for a chip, or the same player as a program for the desk.
 * Same input, same bytes.
 */
import type { Checked, Diagnostic } from '../engine/diagnostic.ts';
import type { Score } from '../engine/look/score.ts';
import { type ChipName, chips } from '../engine/parts/chips.ts';
import { driverFor } from './drivers/driver.ts';
import { transliterate } from './names.ts';
import { printFile } from './player/file.ts';
import { myCodeOf } from './player/my-code.ts';
import { type ProgramPrinter, planSketch } from './player/plan.ts';
import { printProgram } from './print/program.ts';

export interface Sketch {
  /** `NAME.ino` for a chip, `NAME.cpp` for the host. */
  readonly fileName: string;
  readonly text: string;
  readonly dataPins: readonly number[];
  readonly buttonPins: readonly number[];
}

export interface SketchOptions {
  /** Text of an older sketch, whose `my_code` is kept. */
  readonly previous?: string;
}

export function generateSketch(score: Score, board: ChipName, options: SketchOptions = {}): Checked<Sketch> {
  return generateWith(printProgram, score, board, options);
}

/** The same with another printer of patterns, for tests of everything around them. */
export function generateWith(
  print: ProgramPrinter,
  score: Score,
  chip: ChipName,
  { previous }: SketchOptions = {},
): Checked<Sketch> {
  const { piece } = score;
  const [line] = piece.lines;
  const driver = driverFor(chip, line!.part, [line!.pin]);
  if (driver === undefined) return { diagnostics: [boardNotReady(chip)] };

  const kept = myCodeOf(previous);
  const plan = planSketch({ score, chip, driver, print });
  const text = printFile(plan, kept.body);
  const base = transliterate(piece.name) || 'piece';
  return {
    value: {
      fileName: `${base}.${chip === 'host' ? 'cpp' : 'ino'}`,
      text,
      dataPins: piece.lines.map(({ pin }) => pin),
      buttonPins: piece.controls.buttons.map(({ pin }) => pin),
    },
    diagnostics: kept.diagnostics,
  };
}

function boardNotReady(chip: ChipName): Diagnostic {
  return {
    code: 'board-not-ready',
    severity: 'error',
    message: `Sketches for ${chips[chip].title} cannot be made yet.`,
    advice: 'Choose atmega328p, or host to try the piece on a desk.',
  };
}
