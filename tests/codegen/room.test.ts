/** Pieces that do not fit the chip, and chips that are not there. */
import { describe, expect, it } from 'vitest';
import { checkRoom } from '../../codegen/estimate/room.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { chips } from '../../engine/parts/chips.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { lookOf, puntLantern, scoreOf } from './scores.ts';

const strip = (count: number, looks: PieceInput['looks'] = [lookOf('Glow', [{}])]) =>
  scoreOf(
    puntLantern({
      looks,
      lines: [
        {
          pin: 6,
          part: 'ws2812b',
          runs: [{ name: 'rope', flat: { kind: 'straight', count, start: [0, 0], pitchMillimetres: 8 } }],
        },
      ],
    }),
  );

const codesOf = (score: ReturnType<typeof strip>) =>
  generateSketch(score, 'atmega328p', { power: [] }).diagnostics.map(({ code }) => code);

describe('S11 RAM', () => {
  it('refuses one pixel more than fits, and takes one less', () => {
    // 2048 bytes less the reserve of 320 and the sketch's own 61 leave 1667: 555 pixels of 3 bytes.
    const { estimate } = generateSketch(strip(555), 'atmega328p', { power: [] }).value!;
    expect(estimate!.ramBytes).toBe(3 * 555 + 61);
    expect(codesOf(strip(555))).toEqual([]);
    expect(codesOf(strip(556))).toEqual(['too-little-ram']);
  });

  it('counts a second frame where a look dissolves', () => {
    const dissolving = [lookOf('Glow', [{}], { dissolveMilliseconds: 500 })];
    expect(codesOf(strip(270, dissolving))).toEqual([]);
    expect(codesOf(strip(300, dissolving))).toEqual(['too-little-ram']);
  });

  it('does not matter on the desk', () => {
    expect(generateSketch(strip(2000), 'host', { power: [] }).value!.estimate).toBeNull();
  });
});

describe('S11 program memory', () => {
  const estimate = { flashBytes: 9000, ramBytes: 500, cyclesPerPixel: 900, framesPerSecond: 50, looks: [] };

  it('is certain about tables and warns about the rest', () => {
    const codes = (flashBytes: number, tables: number) =>
      checkRoom('atmega328p', { ...estimate, flashBytes }, tables).map(
        ({ code, severity }) => `${severity} ${code}`,
      );
    expect(codes(9000, 2000)).toEqual([]);
    expect(codes(30_720, 2000)).toEqual([]);
    expect(codes(30_721, 2000)).toEqual(['warning little-flash']);
    expect(codes(40_000, 30_721)).toEqual(['error too-little-flash']);
  });

  it('is refused for a piece with more keyframes than fit', () => {
    const keys = (look: number) => ({
      keys: Array.from({ length: 64 }, (_, i) => ({
        atMilliseconds: i * 30 + look,
        value: `#${((i * 40_503 + look * 977) % 0x1000000).toString(16).padStart(6, '0')}`,
      })),
    });
    const looks = Array.from({ length: 24 }, (_, look) =>
      lookOf(`Look ${look}`, [{ parameters: { tint: keys(look) } }]),
    );
    expect(codesOf(strip(8, looks))).toEqual(['too-little-flash']);
  });
});

it.each(['attiny85', 'samd21', 'rp2040', 'esp32c3'] as const)('%s is not ready, and says so', (chip) => {
  const { value, diagnostics } = generateSketch(strip(8), chip);
  expect(value).toBeUndefined();
  expect(diagnostics).toMatchObject([{ code: 'board-not-ready', severity: 'error' }]);
  expect(diagnostics[0]!.message).toContain(chips[chip].title);
});
