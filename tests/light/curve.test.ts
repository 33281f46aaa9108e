import { converter } from 'culori';
import { expect, test } from 'vitest';
import { gammaTable, lightnessLight, srgbLight } from '../../engine/light/curve.ts';

const levels = Array.from({ length: 256 }, (_, level) => level);

test('L1 srgb is the decoding function of IEC 61966-2-1', () => {
  const table = gammaTable('srgb');
  for (const level of levels) {
    const coded = level / 255;
    const light = coded <= 0.04045 ? coded / 12.92 : Math.exp(2.4 * Math.log((coded + 0.055) / 1.055));
    expect(table[level]).toBe(Math.round(65280 * light));
  }
});

test('L1 srgb agrees with culori', () => {
  const toLinear = converter('lrgb');
  const table = gammaTable('srgb');
  for (const level of levels) {
    const { r } = toLinear({ mode: 'rgb', r: level / 255, g: 0, b: 0 })!;
    expect(Math.abs(table[level]! - 65280 * r)).toBeLessThanOrEqual(0.5 + 1e-6);
  }
});

test('L1 srgb at the values that IEC 61966-2-1 is usually quoted with', () => {
  // Level 188 is the nearest to half the light; 0.2140 is the light of half the coded value.
  expect(srgbLight(0.5)).toBeCloseTo(0.2140411, 6);
  expect(srgbLight(188 / 255)).toBeCloseTo(0.5, 2);
  expect([srgbLight(0), srgbLight(1)]).toEqual([0, 1]);
});

test('L1 lightness is CIE L* backwards: CIE 15, in its forward form', () => {
  for (const level of levels) {
    const light = lightnessLight(level / 255);
    const ratio = light > 216 / 24389 ? Math.cbrt(light) : ((24389 / 27) * light + 16) / 116;
    expect(116 * ratio - 16).toBeCloseTo((100 * level) / 255, 9);
  }
});

test('L1 lightness agrees with the lab space of culori', () => {
  const toLinear = converter('lrgb');
  const table = gammaTable('lightness');
  for (const level of levels) {
    const { r, g, b } = toLinear({ mode: 'lab65', l: (100 * level) / 255, a: 0, b: 0 })!;
    // A grey of this lightness: its three linear channels are its luminance, but for rounded matrices.
    const luminance = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    expect(Math.abs(table[level]! - 65280 * luminance)).toBeLessThan(6);
  }
});

test('L1 a power curve is that power', () => {
  for (const power of [1, 2.2, 2.8, 4]) {
    const table = gammaTable({ power });
    for (const level of levels) expect(table[level]).toBe(Math.round(65280 * (level / 255) ** power));
  }
});

test.each(['srgb', 'lightness', { power: 1 }, { power: 4 }] as const)(
  'L1 curve %j has 256 entries, never falls, and reaches from 0 to 65280',
  (curve) => {
    const table = gammaTable(curve);
    expect(table).toHaveLength(256);
    expect([table[0], table[255]]).toEqual([0, 65280]);
    for (const level of levels.slice(1)) expect(table[level]!).toBeGreaterThanOrEqual(table[level - 1]!);
  },
);
