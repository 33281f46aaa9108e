/** The picture, the cloth and their axes, without a browser. */
import { rgb } from 'culori';
import { describe, expect, test } from 'vitest';
import { paintRows } from '../../app/web/cloth/sheet.ts';
import { timeMarks } from '../../app/web/compose/ruler.ts';
import { fitPlaces, typicalPitch } from '../../app/web/picture/fit.ts';
import { brightestDrive, screenColour } from '../../app/web/picture/light.ts';
import { duration, percent } from '../../app/web/session/words.ts';

describe('places', () => {
  const square = Float32Array.of(0, 0, 100, 0, 100, 100, 0, 100);

  test('fit into the box, upright, centred and unstretched', () => {
    const { spots } = fitPlaces(square, 400, 200);
    const [left, bottom, right, , , top] = spots;
    expect(right! - left!).toBeCloseTo(bottom! - top!, 4);
    expect((left! + right!) / 2).toBeCloseTo(200, 4);
    expect((top! + bottom!) / 2).toBeCloseTo(100, 4);
    expect(top!).toBeGreaterThan(0);
    expect(bottom!).toBeLessThan(200);
  });

  test('on one point stand in the middle', () => {
    const { spots, pitch } = fitPlaces(Float32Array.of(7, 7, 7, 7), 300, 300);
    expect([...spots]).toEqual([150, 150, 150, 150]);
    expect(pitch).toBeGreaterThan(0);
  });

  test('have the pitch of the strip, whatever the jumps between runs', () => {
    const strip = Array.from({ length: 20 }, (_, i) => [i * 16.6, i < 10 ? 0 : 500]).flat();
    expect(typicalPitch(Float32Array.from(strip))).toBeCloseTo(16.6, 3);
  });
});

describe('light', () => {
  test('is coded as the sRGB standard codes it, by culori', () => {
    for (const drive of [1, 4, 16, 64, 100]) {
      const share = drive / brightestDrive;
      const coded = rgb({ mode: 'lrgb', r: share, g: 0, b: 0 }).r;
      const colour = screenColour(Uint8Array.of(0, drive, 0), 0, [1, 0, 2]);
      expect(colour >> 16).toBe(Math.round(coded * 255));
      expect(colour & 0xffff).toBe(0);
    }
  });

  test('reads the channels in the order of the part, and adds white to all', () => {
    const bright = 255;
    expect(screenColour(Uint8Array.of(0, 0, 0, 0, 0, bright), 1, [1, 0, 2])).toBe(0x0000ff);
    expect(screenColour(Uint8Array.of(0, 0, 0, bright), 0, [1, 0, 2, 3])).toBe(0xffffff);
  });
});

test('W5 a painted row shows each column its pixel, brighter where the level is higher', () => {
  const levels = Uint8Array.of(0, 0, 0, 255, 0, 0, 0, 128, 0, 10, 20, 30, 0, 0, 0, 0, 0, 255);
  const image = { data: new Uint8ClampedArray(2 * 2 * 4), width: 2, height: 2 } as unknown as ImageData;
  paintRows(image, { levels, rows: 2 }, [1, 2], 0, 2);
  const cell = (row: number, column: number) => [
    ...image.data.slice((row * 2 + column) * 4, (row * 2 + column) * 4 + 4),
  ];
  expect(cell(0, 0)[0]).toBe(255);
  expect(cell(0, 1)[1]).toBeGreaterThan(cell(0, 1)[0]!);
  expect(cell(1, 1)[2]).toBe(255);
  expect(
    cell(1, 0)
      .slice(0, 3)
      .every((channel) => channel > 0 && channel < 40),
  ).toBe(true);
});

test('time marks stand at steps people count in, from 0 on, and not too close', () => {
  expect(timeMarks(24_000, 13).map(({ text }) => text)).toEqual(
    Array.from({ length: 13 }, (_, i) => `${i * 2} s`),
  );
  expect(
    timeMarks(200, 10)
      .map(({ text }) => text)
      .at(-1),
  ).toBe('0.20 s');
  expect(timeMarks(90_000, 6).map(({ text }) => text)).toEqual([
    '0 s',
    '15 s',
    '30 s',
    '45 s',
    '1:00',
    '1:15',
    '1:30',
  ]);
  expect(timeMarks(9 * 3600_000, 5).map(({ text }) => text)).toEqual([
    '0 min',
    '2:00 h',
    '4:00 h',
    '6:00 h',
    '8:00 h',
  ]);
});

test('durations and shares read as people say them', () => {
  expect([20, 1500, 24_000, 60_000, 125_000, 4_800_000].map(duration)).toEqual([
    '0 s',
    '1.5 s',
    '24 s',
    '1 min',
    '2 min 5 s',
    '1 h 20 min',
  ]);
  expect([0, 1, 64, 255].map(percent)).toEqual(['0 %', '0.4 %', '25 %', '100 %']);
});
