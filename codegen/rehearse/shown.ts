/** The sketch's global `shown`: the moment that it is about to draw, read out of the chip's memory. */
import type { Moment } from '../../engine/look/moment.ts';

export const shownSymbol = 'shown';
export const shownBytes = 18;

/**
 * The same struct as it is at every millisecond; `shown` follows from frame to frame. It is static, hence the
 * mangled name. It only dates what `shown` shows, and a sketch may do without.
 */
export const liveSymbol = '_ZL4live';

/** Where the bytes of `uptime_ms` lie in the struct. */
export const uptimeOffset = 4;

/** Where the bytes lie that change by an action alone. */
export const settingOffsets = { brightness: 13, blackout: 14, pause: 15 } as const;
export type SettingName = keyof typeof settingOffsets;

const noLook = 255;

/** `bytes`: the 18 bytes of the struct as an AVR lays it out, without gaps, little-endian. */
export function readShown(bytes: Uint8Array): Moment {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const leavingLook = view.getUint8(16);
  const leaving = { look: leavingLook, ms: view.getUint32(8, true), mix: view.getUint8(17) };
  return {
    ms: view.getUint32(0, true),
    uptimeMs: view.getUint32(uptimeOffset, true),
    look: view.getUint8(12),
    brightness: view.getUint8(13),
    blackout: view.getUint8(14) !== 0,
    paused: view.getUint8(15) !== 0,
    leaving: leavingLook === noLook ? null : leaving,
  };
}
