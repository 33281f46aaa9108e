import { expect, test } from 'vitest';
import { chips } from '../../engine/parts/chips.ts';
import { pixelParts } from '../../engine/parts/pixels.ts';
import { buildCurrentModel, type CurrentModel, frameMilliamps } from '../../engine/power/current.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

/** Chip 10 mA, quiescent 0.7 mA, 20 mA a channel. */
const model: CurrentModel = {
  pixels: 30,
  chipTenths: 100,
  quiescentTenths: 7,
  channelTenths: [200, 200, 200],
  limitMilliamps: 400,
};
const order = [1, 0, 2];

test('P1 by hand: thirty pixels, red 255, green 51, blue 0', () => {
  const drive = Uint8Array.from({ length: 90 }, (_, at) => [51, 255, 0][at % 3]!);
  // 10 + 30 * 0.7 + 30 * (255/255 * 20 + 51/255 * 20 + 0) = 10 + 21 + 30 * 24 = 751 mA.
  expect(frameMilliamps(model, drive, order)).toBeCloseTo(751, 9);
});

test('P1 by hand: a dark frame still draws for the chip and each pixel', () => {
  // 10 + 30 * 0.7 = 31 mA.
  expect(frameMilliamps(model, new Uint8Array(90), order)).toBeCloseTo(31, 9);
});

test('P1 each channel has its own current, wherever it stands on the wire', () => {
  const uneven = { ...model, pixels: 1, channelTenths: [180, 120, 60] };
  // 10.7 mA at rest, plus one channel full on: green first, then red, then blue.
  expect(frameMilliamps(uneven, Uint8Array.of(255, 0, 0), order)).toBeCloseTo(22.7, 9);
  expect(frameMilliamps(uneven, Uint8Array.of(0, 255, 0), order)).toBeCloseTo(28.7, 9);
  expect(frameMilliamps(uneven, Uint8Array.of(0, 0, 255), order)).toBeCloseTo(16.7, 9);
});

test('P1 the model is that of the board, the part and the supply', () => {
  const piece = pieceWith({ lines: [lineOf(30)], supply: { limitMilliamps: 1500 } });
  const part = pixelParts.ws2812b;
  expect(buildCurrentModel(piece, 30)).toEqual({
    pixels: 30,
    chipTenths: chips.atmega328p.currentTenths,
    quiescentTenths: part.quiescentTenths,
    channelTenths: part.channelTenths,
    limitMilliamps: 1500,
  });
});

test('P1 without a known supply the limit is 400 mA', () => {
  expect(buildCurrentModel(pieceWith(), 8).limitMilliamps).toBe(400);
});

test('P1 WS2812B draws what datasheets and measurements say', () => {
  const { channelTenths, quiescentTenths, order: onTheWire } = pixelParts.ws2812b;
  // LED table of the WS2812 datasheet: 20 mA; newer dies 12 to 18 mA by comparison tables.
  for (const tenths of channelTenths) {
    expect(tenths).toBeGreaterThanOrEqual(120);
    expect(tenths).toBeLessThanOrEqual(200);
  }
  // Quiescent 0.62 and 0.7 mA by independent measurement, up to 1 mA.
  expect(quiescentTenths).toBeGreaterThanOrEqual(6);
  expect(quiescentTenths).toBeLessThanOrEqual(10);
  // Datasheet, composition of 24 bit data: G7..G0 R7..R0 B7..B0.
  expect(onTheWire).toEqual([1, 0, 2]);
});
