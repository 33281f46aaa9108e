/** A piece's first time on the chip, without the chip: generate the sketch, build it, run it, compare. */
import type { Checked, Diagnostic } from '../../engine/diagnostic.ts';
import type { Score } from '../../engine/look/score.ts';
import { type ChipName, chips } from '../../engine/parts/chips.ts';
import { generateSketch } from '../sketch.ts';
import { type RehearsalOptions, rehearseText } from './rehearse-text.ts';
import type { RehearsalReport } from './report.ts';

/** Errors: those of `generateSketch` and of `rehearseText`, and `no-emulator`. */
export async function rehearse(
  score: Score,
  { board = 'atmega328p', ...options }: RehearsalOptions & { readonly board?: ChipName } = {},
): Promise<Checked<RehearsalReport>> {
  const { value: sketch, diagnostics } = generateSketch(score, board);
  if (sketch === undefined) return { diagnostics };
  if (board !== 'atmega328p') return { diagnostics: [noEmulator(board)] };
  const rehearsed = await rehearseText(score, sketch.text, options);
  return { ...rehearsed, diagnostics: [...diagnostics, ...rehearsed.diagnostics] };
}

function noEmulator(board: ChipName): Diagnostic {
  return {
    code: 'no-emulator',
    severity: 'error',
    message: `A rehearsal needs an emulated chip, and there is none for ${chips[board].title}.`,
    advice: 'Rehearse on atmega328p; a program for this computer can simply be run.',
  };
}
