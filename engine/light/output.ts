/**
 * The output stage: from levels (sRGB-coded, what the maker designs in) to drive (PWM values on the wire).
 *
 *   levels -> gamma -> brightness and balance -> white share -> rounding -> limiter -> keep-alive, in channel order
 *
 * Light keeps 16 bits up to the single rounding, so that embers stay embers at a tenth of the brightness.
 */
import { pixelParts } from '../parts/pixels.ts';
import type { Piece } from '../piece/schema.ts';
import type { CurrentModel } from '../power/current.ts';
import { gammaTable } from './curve.ts';
import { channelFactor, roundToDrive, scaleLight } from './factor.ts';
import { keepAliveDrive, keepAliveThreshold, liftDrive } from './keep-alive.ts';
import { lightAllowance, lightCurrent, limitFactor, scaleDrive } from './limiter.ts';
import { whiteShare } from './white.ts';

/** Tables and figures of the output stage of one piece. */
export interface OutputStage {
  /** Light of each level: round(65280 * Y(i / 255)), 256 entries. */
  readonly gamma: Uint16Array;
  /** Balance of red, green, blue (and white), 0..256. */
  readonly balance: readonly number[];
  /** 3, or 4 with white. */
  readonly channels: 3 | 4;
  /** Position in the part's data of red, green, blue (and white): drive[order[c]] is channel c. */
  readonly order: readonly number[];
  /** Light current, in 1/2550 mA, below which a frame is lifted; 0 or less: never. */
  readonly keepAliveThreshold: number;
  /** Lift to this drive where a frame would draw less than the keep-alive current; 0: never. */
  readonly keepAliveDrive: number;
}

export function buildOutputStage(piece: Piece, current: CurrentModel): OutputStage {
  const part = pixelParts[piece.lines[0]!.part];
  const { keepAliveMilliamps } = piece.supply;
  const given = piece.output.balance ?? [];
  return {
    gamma: gammaTable(piece.output.curve),
    balance: part.order.map((_, channel) => given[channel] ?? 256),
    channels: part.channels,
    order: part.order,
    keepAliveThreshold: keepAliveThreshold(keepAliveMilliamps, current),
    keepAliveDrive: keepAliveDrive(keepAliveMilliamps, current),
  };
}

/** What became of a frame. */
export interface Delivery {
  /** Current of the light in the finished frame, in 1/2550 mA. */
  readonly lightCurrent: number;
  /** The limiter had to dim it. */
  readonly limited: boolean;
}

/**
 * Writes the drive of one frame, in wire order.
 *
 * @param levels red, green, blue of each pixel, in pixel order; those of hidden pixels are 0
 * @param drive `channels` bytes a pixel, overwritten
 */
export function levelsToDrive(
  stage: OutputStage,
  current: CurrentModel,
  brightness: number,
  levels: Uint8Array,
  drive: Uint8Array,
): Delivery {
  shapeLight(stage, brightness, levels, drive);
  let total = lightCurrent(drive, stage.order, current);
  const factor = limitFactor(total, lightAllowance(current));
  if (factor !== null) {
    scaleDrive(drive, factor);
    total = lightCurrent(drive, stage.order, current);
  }
  if (total < stage.keepAliveThreshold) {
    liftDrive(drive, stage.keepAliveDrive);
    total = lightCurrent(drive, stage.order, current);
  }
  return { lightCurrent: total, limited: factor !== null };
}

function shapeLight(stage: OutputStage, brightness: number, levels: Uint8Array, drive: Uint8Array): void {
  const { gamma, channels } = stage;
  const [redAt, greenAt, blueAt, whiteAt] = stage.order as [number, number, number, number?];
  const [redFactor, greenFactor, blueFactor, whiteFactor] = stage.balance.map((balance, channel) =>
    // White is made of light that already has its brightness, so that only its balance is left to apply.
    channel === 3 ? balance : channelFactor(brightness, balance),
  ) as [number, number, number, number?];
  for (let level = 0, at = 0; level < levels.length; level += 3, at += channels) {
    let red = scaleLight(gamma[levels[level]!]!, redFactor);
    let green = scaleLight(gamma[levels[level + 1]!]!, greenFactor);
    let blue = scaleLight(gamma[levels[level + 2]!]!, blueFactor);
    if (whiteAt !== undefined && whiteFactor !== undefined) {
      const white = whiteShare(red, green, blue);
      red -= white;
      green -= white;
      blue -= white;
      drive[at + whiteAt] = roundToDrive(scaleLight(white, whiteFactor));
    }
    drive[at + redAt] = roundToDrive(red);
    drive[at + greenAt] = roundToDrive(green);
    drive[at + blueAt] = roundToDrive(blue);
  }
}
