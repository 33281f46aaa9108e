/**
 * The current limiter: scales a whole frame down when it would draw more than the supply gives.
 * It looks at the very frame it limits, so there is no lag and no overshoot. Everything is uint32, as on a chip.
 */
import type { CurrentModel } from '../power/current.ts';

/** Current of the light alone in 1/2550 mA: the sum over channels of drive sum times tenths of a milliamp. */
export function lightCurrent(drive: Uint8Array, order: readonly number[], model: CurrentModel): number {
  const channels = order.length;
  let total = 0;
  for (let channel = 0; channel < channels; channel++) {
    let sum = 0;
    for (let at = order[channel]!; at < drive.length; at += channels) sum += drive[at]!;
    total += sum * model.channelTenths[channel]!;
  }
  return total;
}

/** What the limit leaves for light beside chip and quiescent current, in 1/2550 mA. */
export function lightAllowance(model: CurrentModel): number {
  const base = model.chipTenths + model.pixels * model.quiescentTenths;
  return Math.max(0, model.limitMilliamps * 10 - base) * 255;
}

/** Factor in 1/256 by which drive is to be scaled, or null where the frame is within the allowance. */
export function limitFactor(lightCurrent: number, allowance: number): number | null {
  if (lightCurrent <= allowance) return null;
  return Math.floor(allowance / ((lightCurrent + 255) >>> 8));
}

/** Scales drive in place. */
export function scaleDrive(drive: Uint8Array, factor: number): void {
  for (let at = 0; at < drive.length; at++) drive[at] = (drive[at]! * factor) >> 8;
}
