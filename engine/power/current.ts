/** What a frame draws: milliamps = chip + n * quiescent + sum over channels of drive/255 * channel current. */
import { lightCurrent } from '../light/limiter.ts';
import { chips } from '../parts/chips.ts';
import { pixelParts } from '../parts/pixels.ts';
import type { Piece } from '../piece/schema.ts';

export interface CurrentModel {
  /** Addresses on the line, hidden ones too: they all draw quiescent current. */
  readonly pixels: number;
  /** In tenths of a milliamp, so that the limiter works in whole numbers. */
  readonly chipTenths: number;
  readonly quiescentTenths: number;
  /** Red, green, blue (and white) at full drive. */
  readonly channelTenths: readonly number[];
  readonly limitMilliamps: number;
}

/** @param pixels addresses on the line, hidden ones included, removed ones not */
export function buildCurrentModel(piece: Piece, pixels: number): CurrentModel {
  const part = pixelParts[piece.lines[0]!.part];
  return {
    pixels,
    chipTenths: chips[piece.board].currentTenths,
    quiescentTenths: part.quiescentTenths,
    channelTenths: part.channelTenths,
    limitMilliamps: piece.supply.limitMilliamps,
  };
}

/** @param drive bytes in wire order, whose channel c of each pixel stands at `order[c]` */
export function frameMilliamps(model: CurrentModel, drive: Uint8Array, order: readonly number[]): number {
  return milliampsOf(model, lightCurrent(drive, order, model));
}

/** @param lightCurrent as the limiter counts it, in 1/2550 mA */
export function milliampsOf(model: CurrentModel, lightCurrent: number): number {
  const base = model.chipTenths + model.pixels * model.quiescentTenths;
  return (base * 255 + lightCurrent) / 2550;
}
