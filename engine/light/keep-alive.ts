/**
 * Many power banks switch off when little is drawn. A frame that would draw less than the keep-alive
 * current is lifted: every channel of every pixel, hidden ones too, shows at least a faint glow.
 */
import type { CurrentModel } from '../power/current.ts';

/** Light current in 1/2550 mA below which a frame is lifted. */
export function keepAliveThreshold(keepAliveMilliamps: number, model: CurrentModel): number {
  const base = model.chipTenths + model.pixels * model.quiescentTenths;
  return keepAliveMilliamps === 0 ? 0 : (keepAliveMilliamps * 10 - base) * 255;
}

/** The smallest drive which, on every channel of every pixel, draws the keep-alive current; at most 255. */
export function keepAliveDrive(keepAliveMilliamps: number, model: CurrentModel): number {
  const perStep = model.pixels * model.channelTenths.reduce((sum, tenths) => sum + tenths, 0);
  const needed = Math.ceil(keepAliveThreshold(keepAliveMilliamps, model) / perStep);
  return Math.min(255, Math.max(0, needed));
}

/** Lifts drive in place. */
export function liftDrive(drive: Uint8Array, floor: number): void {
  for (let at = 0; at < drive.length; at++) if (drive[at]! < floor) drive[at] = floor;
}
