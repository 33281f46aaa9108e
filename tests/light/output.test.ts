import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brightnessFactor, channelFactor } from '../../engine/light/factor.ts';
import { buildOutputStage, levelsToDrive, type OutputStage } from '../../engine/light/output.ts';
import { whiteShare } from '../../engine/light/white.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { buildCurrentModel, type CurrentModel, milliampsOf } from '../../engine/power/current.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

/** A stage that nothing limits. */
function stageWith(changes: Partial<PieceInput> = {}): { stage: OutputStage; current: CurrentModel } {
  const piece = pieceWith({ supply: { limitMilliamps: 20_000 }, ...changes });
  const current = buildCurrentModel(piece, 8);
  return { stage: buildOutputStage(piece, current), current };
}

function driveOf(levels: number[], brightness: number, changes: Partial<PieceInput> = {}): number[] {
  const { stage, current } = stageWith(changes);
  const drive = new Uint8Array(levels.length);
  levelsToDrive(stage, current, brightness, Uint8Array.from(levels), drive);
  return [...drive];
}

test('L2 brightness 0 is dark and 255 is exactly one', () => {
  expect([0, 1, 127, 128, 254, 255].map(brightnessFactor)).toEqual([0, 1, 127, 129, 255, 256]);
  expect(channelFactor(255, 256)).toBe(256);
  // 129 * 100 / 256 = 50.39, and 64 * 250 / 256 = 62.5, which is rounded up.
  expect(channelFactor(128, 100)).toBe(50);
  expect(channelFactor(64, 250)).toBe(63);
});

test('L2 at full brightness drive is the light of the level, rounded once', () => {
  for (let level = 0; level < 256; level++) {
    const coded = level / 255;
    const light = coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
    const [, red] = driveOf([level, 0, 0], 255);
    expect(Math.abs(red! - 255 * light)).toBeLessThan(0.503);
  }
});

test('L2 one rounding: at a tenth of the brightness level 60 still glows', () => {
  // G[60] = round(65280 * 0.04519) = 2950; f = 26; (2950 * 26) >> 8 = 299; (299 + 128) >> 8 = 1.
  // Rounded after gamma, and floored after brightness as a second step, it would be dark.
  expect(driveOf([60, 60, 60], 26)).toEqual([1, 1, 1]);
});

test('L2 by hand: level 188 at brightness 64', () => {
  // Y(188/255) = 0.50289, G = 32828; f = 64; (32828 * 64) >> 8 = 8207; (8207 + 128) >> 8 = 32.
  expect(driveOf([188, 0, 0], 64)).toEqual([0, 32, 0]);
});

test('L2 balance scales its own channel only', () => {
  const balance = [256, 128, 0];
  expect(driveOf([255, 255, 255], 255, { output: { balance } })).toEqual([128, 255, 0]);
});

test('L2 the curve of the piece is used', () => {
  // 255 * (128/255)^1 = 128 with a plain power of one.
  expect(driveOf([128, 0, 0], 255, { output: { curve: { power: 1 } } })).toEqual([0, 128, 0]);
});

test('L3 white is the share that the three have in common, in linear light', () => {
  expect(whiteShare(300, 200, 65280)).toBe(200);
  expect(whiteShare(0, 200, 300)).toBe(0);
});

test('L3 a part with a white die: the four add up to the three', () => {
  const { stage, current } = stageWith();
  const withWhite: OutputStage = {
    ...stage,
    channels: 4,
    order: [1, 0, 2, 3],
    balance: [256, 256, 256, 256],
  };
  const model = { ...current, channelTenths: [200, 200, 200, 200] };
  const drive = new Uint8Array(4);
  levelsToDrive(withWhite, model, 255, Uint8Array.of(255, 188, 100), drive);
  const [green, warm, cold, white] = drive;
  expect(cold).toBe(0);
  expect(white).toBe(driveOf([100, 100, 100], 255)[0]);
  expect(Math.abs(green! + white! - driveOf([188, 188, 188], 255)[0]!)).toBeLessThanOrEqual(1);
  expect(Math.abs(warm! + white! - 255)).toBeLessThanOrEqual(1);
});

test('L6 WS2812B takes green, red, blue (datasheet: composition of 24 bit data)', () => {
  expect(driveOf([255, 0, 0], 255)).toEqual([0, 255, 0]);
  expect(driveOf([0, 255, 0], 255)).toEqual([255, 0, 0]);
  expect(driveOf([0, 0, 255, 255, 0, 0], 255)).toEqual([0, 0, 255, 0, 255, 0]);
});

test('L2 L4 more level never means less drive while nothing is limited', () => {
  const { stage, current } = stageWith();
  for (const brightness of [1, 26, 64, 128, 255]) {
    let before = 0;
    for (let level = 0; level < 256; level++) {
      const drive = new Uint8Array(3);
      levelsToDrive(stage, current, brightness, Uint8Array.of(level, 0, 0), drive);
      expect(drive[1]!).toBeGreaterThanOrEqual(before);
      before = drive[1]!;
    }
  }
});

test('L4 L5 no frame exceeds the limit, whatever is shown, lifted or not', () => {
  fc.assert(
    fc.property(
      fc.uint8Array({ minLength: 1, maxLength: 60 }),
      fc.integer({ min: 1, max: 100 }),
      fc.integer({ min: 0, max: 255 }),
      fc.integer({ min: 11, max: 4000 }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
      (pattern, pixels, brightness, limitMilliamps, keepAlive) => {
        const keepAliveMilliamps = Math.min(1000, Math.floor(limitMilliamps * keepAlive));
        const piece = pieceWith({ lines: [lineOf(pixels)], supply: { limitMilliamps, keepAliveMilliamps } });
        const current = buildCurrentModel(piece, pixels);
        const stage = buildOutputStage(piece, current);
        const levels = Uint8Array.from({ length: pixels * 3 }, (_, at) => pattern[at % pattern.length]!);
        const drive = new Uint8Array(pixels * 3);
        const { lightCurrent } = levelsToDrive(stage, current, brightness, levels, drive);
        // What dark pixels and the chip draw cannot be limited.
        const least = milliampsOf(current, 0);
        const milliamps = milliampsOf(current, lightCurrent);
        expect(milliamps).toBeLessThanOrEqual(Math.max(limitMilliamps, least));
        if (stage.keepAliveDrive < 255) expect(milliamps).toBeGreaterThanOrEqual(keepAliveMilliamps);
      },
    ),
    { seed: 20260604, numRuns: 2000 },
  );
});
