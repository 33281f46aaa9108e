/** Laying the levels of a clip on the backdrop. */
import { type Blend, type BlendName, blends } from './blend.ts';

/**
 * @param backdrop red, green, blue of each pixel of the piece
 * @param offsets where in the backdrop each entry of the clip's zone stands
 * @param source three levels an entry
 * @param amount opacity and fades together, 0..255
 */
export function lay(
  blend: BlendName,
  backdrop: Uint8Array,
  offsets: Uint16Array,
  source: Uint8Array,
  amount: number,
): void {
  // Nearly every clip is of the first two kinds: they have loops of their own, which run much faster.
  if (blend === 'normal' && amount === 255) cover(backdrop, offsets, source);
  else if (blend === 'normal') mix(backdrop, offsets, source, amount);
  else layBy(blends[blend], backdrop, offsets, source, amount);
}

function layBy(
  blend: Blend,
  backdrop: Uint8Array,
  offsets: Uint16Array,
  source: Uint8Array,
  amount: number,
): void {
  for (let entry = 0, from = 0; entry < offsets.length; entry++) {
    const to = offsets[entry]!;
    for (let channel = 0; channel < 3; channel++, from++) {
      backdrop[to + channel] = blend(backdrop[to + channel]!, source[from]!, amount);
    }
  }
}

function cover(backdrop: Uint8Array, offsets: Uint16Array, source: Uint8Array): void {
  for (let entry = 0, from = 0; entry < offsets.length; entry++, from += 3) {
    const to = offsets[entry]!;
    backdrop[to] = source[from]!;
    backdrop[to + 1] = source[from + 1]!;
    backdrop[to + 2] = source[from + 2]!;
  }
}

function mix(backdrop: Uint8Array, offsets: Uint16Array, source: Uint8Array, amount: number): void {
  const keep = 256 - amount;
  const take = amount + 1;
  for (let entry = 0, from = 0; entry < offsets.length; entry++, from += 3) {
    const to = offsets[entry]!;
    backdrop[to] = (backdrop[to]! * keep + source[from]! * take) >> 8;
    backdrop[to + 1] = (backdrop[to + 1]! * keep + source[from + 1]! * take) >> 8;
    backdrop[to + 2] = (backdrop[to + 2]! * keep + source[from + 2]! * take) >> 8;
  }
}
