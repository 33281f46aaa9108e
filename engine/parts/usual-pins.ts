/**
 * Pins that a maker would take first on the usual boards of each chip: none of them loads a sketch, starts
 * the chip, carries a serial or USB line or has a lamp on it.
 *
 * Common practice, no source. From memory: the pins that decide how an ESP32-C3 starts are 2, 8 and 9, its
 * USB lines 18 and 19; the reset pin of an ATtiny85 is 5.
 */
import type { ChipName } from './chips.ts';

export interface UsualPins {
  /** For the line of pixels. */
  readonly line: number;
  /** For buttons, in the order in which they are taken. */
  readonly buttons: readonly number[];
}

export const usualPins: Readonly<Record<ChipName, UsualPins>> = {
  atmega328p: { line: 6, buttons: [2, 3, 4, 5, 7, 8, 9, 10] },
  attiny85: { line: 0, buttons: [2, 3, 4, 1] },
  samd21: { line: 6, buttons: [2, 3, 4, 5, 7, 8, 9, 10] },
  rp2040: { line: 2, buttons: [3, 4, 5, 6, 7, 8, 9, 10] },
  esp32c3: { line: 4, buttons: [5, 6, 7, 10, 3, 1, 0] },
  host: { line: 6, buttons: [2, 3, 4, 5, 7, 8, 9, 10] },
};
