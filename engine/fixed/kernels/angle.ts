import type { Range } from '../integers.ts';
import { angleTable } from '../tables.ts';
import type { Kernel } from './kernel.ts';

/**
 * Angle of the direction (x, y) in 1/65536 turns, -32768..32767, counter-clockwise from x; worst error 2.2.
 * 0 for (0, 0).
 */
function evaluate(y: number, x: number): number {
  let flat = Math.abs(x);
  let steep = Math.abs(y);
  if (flat === 0 && steep === 0) return 0;
  // Down to 17 bits, so that the quotient below fits 32 bits on the chip.
  while (flat >= 0x20000 || steep >= 0x20000) {
    flat = Math.floor(flat / 2);
    steep = Math.floor(steep / 2);
  }
  const isSteep = steep > flat;
  const ratio = isSteep ? Math.floor((flat * 16384) / steep) : Math.floor((steep * 16384) / flat);
  const low = angleTable[ratio >> 8]!;
  let turn = low + (((angleTable[(ratio >> 8) + 1]! - low) * (ratio & 255)) >> 8);
  if (isSteep) turn = 16384 - turn;
  if (x < 0) turn = 32768 - turn;
  return y < 0 ? -turn : Math.min(turn, 32767);
}

const range = (y: Range, x: Range): Range =>
  y.min >= 0 && x.min >= 0 ? { min: 0, max: 16384 } : { min: -32768, max: 32767 };

export const angle: Kernel = { takes: ['i32', 'i32'], gives: 'i16', evaluate, range, avrCycles: 850 };
