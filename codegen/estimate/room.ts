/** Whether a sketch fits its chip. What is certain is an error, what is estimated is a warning. */
import type { Diagnostic } from '../../engine/diagnostic.ts';
import { type ChipName, chips } from '../../engine/parts/chips.ts';
import type { Estimate } from './estimate.ts';
import { reservedRamBytes } from './ram.ts';

/** Boards keep a part of the program memory for their boot loader: up to 2 KB on this chip (datasheet, boot size). */
const bootLoaderBytes = 2048;

export function checkRoom(chip: ChipName, estimate: Estimate, tableBytes: number): Diagnostic[] {
  const { title, ramBytes, flashBytes } = chips[chip];
  const diagnostics: Diagnostic[] = [];
  if (ramBytes !== null && estimate.ramBytes + reservedRamBytes > ramBytes) {
    diagnostics.push({
      code: 'too-little-ram',
      severity: 'error',
      message: `The sketch needs ${estimate.ramBytes} bytes of RAM and ${reservedRamBytes} for its stack; ${title} has ${ramBytes}.`,
      advice:
        'Use fewer pixels, let no look dissolve (that halves the need), or choose a chip with more RAM.',
    });
  }
  if (flashBytes === null) return diagnostics;
  const room = flashBytes - bootLoaderBytes;
  if (tableBytes > room) {
    diagnostics.push({
      code: 'too-little-flash',
      severity: 'error',
      message: `The tables of the sketch alone need ${tableBytes} bytes of program memory; ${title} has ${room} to give.`,
      advice: 'Use fewer looks, gradients and keyframes, or choose a chip with more program memory.',
    });
  } else if (estimate.flashBytes > room) {
    diagnostics.push({
      code: 'little-flash',
      severity: 'warning',
      message: `By estimate the sketch needs ${estimate.flashBytes} bytes of program memory; ${title} has ${room} to give.`,
      advice: 'Build it before you rely on it; if it is too large, use fewer looks or simpler patterns.',
    });
  }
  return diagnostics;
}
