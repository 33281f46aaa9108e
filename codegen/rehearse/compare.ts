/** Holds every frame on the wire against what the engine draws for the same moment. */
import type { Moment } from '../../engine/look/moment.ts';
import type { RecordedFrame } from './recording.ts';

export interface Mismatch {
  /** Number of the frame, from 0. */
  readonly frame: number;
  readonly moment: Moment;
  /** The first byte that differs, in wire order. */
  readonly byte: number;
  /** Undefined where one of the two is shorter. */
  readonly sent: number | undefined;
  readonly expected: number | undefined;
}

/** One mismatch a frame at most. A frame with bits left over is wrong at its end. */
export function compareFrames(
  frames: readonly RecordedFrame[],
  expected: (moment: Moment) => Uint8Array,
): Mismatch[] {
  const mismatches: Mismatch[] = [];
  frames.forEach(({ moment, bytes, bits }, frame) => {
    const drive = expected(moment);
    const longer = Math.max(bytes.length, drive.length);
    let byte = 0;
    while (byte < longer && bytes[byte] === drive[byte]) byte++;
    if (byte === longer && bits === 8 * bytes.length) return;
    mismatches.push({ frame, moment, byte, sent: bytes[byte], expected: drive[byte] });
  });
  return mismatches;
}
