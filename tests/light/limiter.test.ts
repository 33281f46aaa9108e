import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepAliveDrive, keepAliveThreshold, liftDrive } from '../../engine/light/keep-alive.ts';
import { lightAllowance, lightCurrent, limitFactor, scaleDrive } from '../../engine/light/limiter.ts';
import type { CurrentModel } from '../../engine/power/current.ts';

/** Ten pixels: chip 10 mA, quiescent 1 mA each, so 20 mA with everything dark; 20, 15, 10 mA a channel. */
const model: CurrentModel = {
  pixels: 10,
  chipTenths: 100,
  quiescentTenths: 10,
  channelTenths: [200, 150, 100],
  limitMilliamps: 100,
};
const order = [1, 0, 2];

function frameOf(green: number, red: number, blue: number, pixels = 10): Uint8Array {
  return Uint8Array.from({ length: 3 * pixels }, (_, at) => [green, red, blue][at % 3]!);
}

test('L4 the light current counts each channel where it stands on the wire', () => {
  // Drive sums 2550 each: red 2550 * 200, green 2550 * 150, blue 2550 * 100.
  expect(lightCurrent(frameOf(0, 255, 0), order, model)).toBe(510_000);
  expect(lightCurrent(frameOf(255, 0, 0), order, model)).toBe(382_500);
  expect(lightCurrent(frameOf(0, 0, 255), order, model)).toBe(255_000);
  expect(lightCurrent(frameOf(255, 255, 255), order, model)).toBe(1_147_500);
});

test('L4 the allowance is what the limit leaves: (100 - 20) * 2550', () => {
  expect(lightAllowance(model)).toBe(204_000);
  expect(lightAllowance({ ...model, limitMilliamps: 20 })).toBe(0);
  expect(lightAllowance({ ...model, limitMilliamps: 5 })).toBe(0);
});

test('L4 a frame at the allowance passes, one above it is scaled', () => {
  expect(limitFactor(204_000, 204_000)).toBeNull();
  // floor(204000 / ((204001 + 255) >> 8)) = floor(204000 / 797) = 255.
  expect(limitFactor(204_001, 204_000)).toBe(255);
  // floor(204000 / (1147755 >> 8)) = floor(204000 / 4483) = 45.
  expect(limitFactor(1_147_500, 204_000)).toBe(45);
  expect(limitFactor(1, 0)).toBe(0);
});

test('L4 by hand: ten pixels full on at 100 mA', () => {
  const drive = frameOf(255, 255, 255);
  scaleDrive(drive, limitFactor(lightCurrent(drive, order, model), lightAllowance(model))!);
  // (255 * 45) >> 8 = 44; 20 mA + 10 pixels * 45 mA * 44 / 255 = 97.6 mA.
  expect(new Set(drive)).toEqual(new Set([44]));
});

test('L4 never above the allowance after scaling, and never needlessly dark', () => {
  const byte = fc.integer({ min: 0, max: 255 });
  fc.assert(
    fc.property(byte, byte, byte, fc.integer({ min: 21, max: 500 }), (green, red, blue, limitMilliamps) => {
      const limited = { ...model, limitMilliamps };
      const allowance = lightAllowance(limited);
      const drive = frameOf(green, red, blue);
      const factor = limitFactor(lightCurrent(drive, order, limited), allowance);
      if (factor === null) return;
      expect(factor).toBeLessThan(256);
      scaleDrive(drive, factor);
      const after = lightCurrent(drive, order, limited);
      expect(after).toBeLessThanOrEqual(allowance);
      // The factor and each drive value are floored: at most a step of the factor and one of each drive.
      const step = lightCurrent(frameOf(1, 1, 1), order, limited);
      const onePart = lightCurrent(frameOf(green, red, blue), order, limited) / 256;
      expect(after).toBeGreaterThan(allowance - step - onePart - allowance / 256);
    }),
    { seed: 20260605, numRuns: 1000 },
  );
});

test('L4 the sums of the largest piece fit 32 bits', () => {
  const largest = { ...model, pixels: 2000, channelTenths: [200, 200, 200], limitMilliamps: 20_000 };
  expect(lightCurrent(frameOf(255, 255, 255, 2000), order, largest)).toBeLessThan(2 ** 32);
  expect(lightAllowance({ ...largest, chipTenths: 0, quiescentTenths: 0 })).toBeLessThan(2 ** 32);
});

test('L5 the floor is the smallest drive that reaches the keep-alive current', () => {
  // 20 mA at rest; v * 10 * 45 mA / 255 >= 30 mA, so v >= 17.
  expect(keepAliveDrive(50, model)).toBe(17);
  expect(keepAliveDrive(51, model)).toBe(18);
  expect(keepAliveThreshold(50, model)).toBe(76_500);
  for (let milliamps = 21; milliamps < 400; milliamps++) {
    const floor = keepAliveDrive(milliamps, model);
    const drawn = (drive: number) => 20 + (drive * 10 * 45) / 255;
    expect(drawn(floor)).toBeGreaterThanOrEqual(milliamps - 1e-9);
    expect(drawn(floor - 1)).toBeLessThan(milliamps);
  }
});

test('L5 no floor without a keep-alive current, or where rest alone draws it', () => {
  expect(keepAliveDrive(0, model)).toBe(0);
  expect(keepAliveThreshold(0, model)).toBe(0);
  expect(keepAliveDrive(20, model)).toBe(0);
  expect(keepAliveThreshold(15, model)).toBeLessThan(0);
});

test('L5 lifting leaves brighter channels alone', () => {
  const drive = Uint8Array.of(0, 16, 17, 200);
  liftDrive(drive, 17);
  expect([...drive]).toEqual([17, 17, 17, 200]);
});
