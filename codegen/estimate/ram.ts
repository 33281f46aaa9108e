/** RAM of a sketch on an 8 bit chip, byte for byte: there, structures have no gaps and pointers two bytes. */
import type { Score } from '../../engine/look/score.ts';
import type { Features } from '../player/select.ts';

const bytes = {
  /** `struct Moment`: three uint32_t and six uint8_t. */
  moment: 18,
  loop: 6,
  /** `steady_ms`, `raw`, `down`; with gestures `phase_ms` and `phase` too. */
  button: 3,
  buttonWithGestures: 6,
  lastRawDown: 1,
  /** `picture_changed`, `last_millis`, `credit_us`, `sent_us`. */
  clock: 13,
};

/** All variables of the sketch; those of the sketch core and the stack are not its own. */
export function sketchRamBytes(score: Score, features: Features): number {
  const frame = score.pixels.length * score.output.channels;
  const looksAtOnce = features.dissolve ? 2 : 1;
  const button = features.gestures ? bytes.buttonWithGestures : bytes.button;
  return (
    looksAtOnce * (frame + 2 * bytes.loop) +
    score.piece.controls.buttons.length * button +
    Number(features.buttons) * bytes.lastRawDown +
    2 * bytes.moment +
    bytes.clock
  );
}

/**
 * What has to stay free: the stack at its deepest (a pattern's variables, the calls between a pixel and the
 * player, an interrupt) and the few variables of a sketch core. Rehearsals measure the stack.
 */
export const reservedRamBytes = 320;
