/** How numbers enter a pattern, in which formats they are held, and how they leave it. */
import { describe, expect, test } from 'vitest';
import {
  buildGradient,
  gradientColour,
  gradientPart,
  gradientSegment,
  levelToLowp,
} from '../../engine/fixed/gradient.ts';
import { inOrder } from '../../engine/pattern/ir.ts';
import { findLibraryPattern } from '../../engine/pattern/library.ts';
import { Chance } from '../support/generate/chance.ts';
import {
  compiled,
  drawer,
  inputsOf,
  lightOf,
  longestTime,
  type PixelMoment,
  programOf,
  randomStops,
  valuesOfNodes,
  type ZoneSetting,
} from '../support/patterns.ts';
import { gradientColour as exactColour } from '../support/patterns-reference.ts';

const still: PixelMoment = { time: 0, turn: 0, index: 0, placeX: 0, placeY: 0 };
const sixty: ZoneSetting = { count: 60, seed: 0 };

/** Red before it is cut to a level, raw: 14 fraction bits in lowp, 16 in the other formats. */
function rawRed(expression: string, zone: ZoneSetting = sixty): (moment: Partial<PixelMoment>) => number {
  const program = programOf(compiled({ source: lightOf(`vec3(${expression})`), parameters: [] }), {}, zone);
  const [level] = program.levels;
  const cut = level.op === 'cast' ? level.a : level;
  if (cut.op !== 'shr') throw new Error(`${expression} does not end in a level`);
  // Two shifts in a row have become one.
  const more = cut.shift === 6 ? 0 : cut.shift - 8;
  return (moment) => {
    const values = valuesOfNodes(program.levels, inputsOf({ ...still, ...moment }, zone));
    return Math.floor(values.get(cut.a)! / 2 ** more);
  };
}

describe('F8 along', () => {
  test('is (index * K) >> 16 with K = floor(2^32 / count), for every zone there may be', () => {
    for (const count of [2, 3, 7, 59, 60, 255, 256, 999, 1024, 1999, 2000]) {
      const along = rawRed('along', { count, seed: 0 });
      const inverse = 2n ** 32n / BigInt(count);
      for (let index = 0; index < count; index += count > 300 ? 13 : 1) {
        expect(along({ index })).toBe(Number((BigInt(index) * inverse) >> 16n));
      }
    }
  });

  test('is 0 in a zone of one', () => {
    const draw = drawer(
      programOf(
        compiled({ source: lightOf('vec3(along + 0.5)'), parameters: [] }),
        {},
        { count: 1, seed: 0 },
      ),
    );
    expect(draw(still)).toEqual([128, 128, 128]);
  });

  test('times a number is one product, cut once: a running sum gives the same bits', () => {
    const count = 180;
    const ramp = rawRed('fract(along * 3.7)', { count, seed: 0 });
    const factor = Math.round(3.7 * 65_536);
    const step = Number(((2n ** 32n / BigInt(count)) * BigInt(factor)) >> 16n) % 2 ** 32;
    let sum = 0;
    for (let index = 0; index < count; index++) {
      expect(ramp({ index })).toBe(Math.floor(sum / 65_536) % 65_536);
      sum = (sum + step) % 2 ** 32;
    }
  });
});

describe('F9 modulo one turn', () => {
  const times = [0, 1, 65_535, 65_536, 12_345_678, 1_999_999_999, longestTime - 1, longestTime];

  test.each([3, 0.7, 30, 441.5, 30_000])(
    'fract(time * %d) keeps the low bits of the whole product',
    (rate) => {
      const fraction = rawRed(`fract(time * ${rate.toFixed(4)})`);
      for (const time of times) {
        const product = (BigInt(time) * BigInt(Math.round(rate * 65_536))) >> 16n;
        expect(fraction({ time })).toBe(Number(product & 0xffffn));
      }
    },
  );

  test('a sum is the sum of its fractions, whatever it grows to', () => {
    const fraction = rawRed('fract(time * 700.0 + time * 600.0 - 12345.25)');
    const scaled = (time: number, factor: number) => BigInt(time) * BigInt(factor);
    for (const time of times) {
      const sum = scaled(time, 700) + scaled(time, 600) - (12_345n * 65_536n + 16_384n);
      expect(fraction({ time })).toBe(Number(BigInt.asUintN(16, sum)));
    }
  });
});

describe('F14 levels', () => {
  const levelOf = (expression: string) => {
    const draw = drawer(
      programOf(compiled({ source: lightOf(`vec3(${expression})`), parameters: [] }), {}, sixty),
    );
    return (moment: Partial<PixelMoment>) => draw({ ...still, ...moment })[0]!;
  };
  const expected = (x: number) => (x < 0 ? 0 : x >= 1 ? 255 : Math.floor(256 * x));

  test('from lowp: every value that a place has', () => {
    const level = levelOf('place.x');
    for (let placeX = -16_384; placeX <= 16_384; placeX++)
      expect(level({ placeX })).toBe(expected(placeX / 16_384));
  });

  test('from a phase: every fraction', () => {
    const level = levelOf('fract(time)');
    for (let time = 0; time < 65_536; time++) expect(level({ time })).toBe(expected(time / 65_536));
  });

  test('from mediump, below 0 and far above 1', () => {
    const level = levelOf('time - 2.0');
    for (let time = 0; time < 4 * 65_536; time += 7)
      expect(level({ time })).toBe(expected(time / 65_536 - 2));
    expect(level({ time: longestTime })).toBe(255);
  });
});

describe('F11 what enters', () => {
  test('a colour is round(v * 16384 / 255), and comes out as the level it was, but for 254', () => {
    const pattern = compiled(findLibraryPattern('still/1')!);
    for (let level = 0; level < 256; level++) {
      expect(levelToLowp(level)).toBe(Math.round((level * 16_384) / 255));
      const hex = level.toString(16).padStart(2, '0');
      const draw = drawer(programOf(pattern, { tint: `#${hex}00${hex}` }, sixty));
      // 254 / 255 lies a 64th of a level below 255 / 256, and is rounded up to it.
      const shown = level === 254 ? 255 : level;
      expect(draw(still)).toEqual([shown, 0, shown]);
    }
  });

  const numberIn = (declared: string, min: number, max: number) => {
    const description = { kind: 'number', name: 'ebb', label: 'Ebb', min, max, default: min } as const;
    const source = `uniform ${declared} float ebb;\n${lightOf('vec3(fract(ebb))')}`;
    const pattern = compiled({ source, parameters: [description] });
    const node = inOrder(pattern.levels).find(({ op }) => op === 'parameter')!;
    return [pattern.slots[0]!.holds, node.min, node.max];
  };

  test('a number takes 16 bits where it is declared lowp and its range fits', () => {
    expect(numberIn('lowp', -2, 1.9)).toEqual(['lowp', -32_768, Math.round(1.9 * 16_384)]);
    expect(numberIn('lowp', 0, 2)).toEqual(['mediump', 0, 131_072]);
    expect(numberIn('mediump', 0, 1)).toEqual(['mediump', 0, 65_536]);
    expect(numberIn('', -16_383, 16_383)).toEqual(['mediump', -16_383 * 65_536, 16_383 * 65_536]);
  });

  test('a gradient is read as its stops say, to three steps of 1/16384', () => {
    const chance = new Chance(8);
    for (let number = 0; number < 200; number++) {
      const stops = randomStops(chance);
      const table = buildGradient('reed', stops);
      for (let i = 0; i < 60; i++) {
        const at = chance.flip(0.2) ? chance.pick([0, 1, 16_383, 16_384]) : chance.whole(0, 16_384);
        const segment = gradientSegment(table, at);
        const part = gradientPart(table, at, segment);
        // Its places are rounded to steps, so that the exact ones are those of the table.
        const held = stops.map((stop) => ({ ...stop, at: Math.round(stop.at * 16_384) / 16_384 }));
        const exact = exactColour(held, at / 16_384);
        for (const channel of [0, 1, 2]) {
          const colour = gradientColour(table, channel, segment, part);
          expect(Math.abs(colour - exact[channel]! * 16_384)).toBeLessThan(3);
        }
      }
    }
  });

  test('the outer colours reach the edges, and the last of equal stops wins', () => {
    const table = buildGradient('reed', [
      { at: 0.25, colour: '#ff0000' },
      { at: 0.5, colour: '#00ff00' },
      { at: 0.5, colour: '#0000ff' },
      { at: 0.75, colour: '#ffffff' },
    ]);
    const at = (x: number) => {
      const segment = gradientSegment(table, x);
      return [0, 1, 2].map((channel) =>
        gradientColour(table, channel, segment, gradientPart(table, x, segment)),
      );
    };
    expect(at(0)).toEqual([16_384, 0, 0]);
    expect(at(4096)).toEqual([16_384, 0, 0]);
    expect(at(8191)[1]).toBe(16_380);
    expect(at(8192)).toEqual([0, 0, 16_384]);
    expect(at(16_384)).toEqual([16_384, 16_384, 16_384]);
    const last = buildGradient('reed', [
      { at: 0, colour: '#000000' },
      { at: 1, colour: '#ff0000' },
      { at: 1, colour: '#00ff00' },
    ]);
    expect(gradientColour(last, 1, gradientSegment(last, 16_384), 0)).toBe(16_384);
  });
});

describe('F6 numbers of the source', () => {
  test('arithmetic among them is exact and rounded once', () => {
    // One third of 16384 is 5461.33; three times what that is rounded to would be 16383.
    expect(rawRed('place.x * 0.5 + 1.0 / 3.0 * 3.0 - 0.5')({})).toBe(8192);
    // 0.15 is 2457.6 steps, 0.3 is 4915.2.
    expect(rawRed('place.x * 0.5 + 0.15 + 0.15')({})).toBe(2 * 2458);
    expect(rawRed('place.x * 0.5 + (0.15 + 0.15)')({})).toBe(4915);
  });

  test('two factors in a row become one', () => {
    expect(rawRed('turn * 3.0 * 0.25')({ turn: 10_001 })).toBe(Math.floor((10_001 * 3) / 4));
  });
});

describe('F15 whole numbers', () => {
  test('wrap at 32 bits, as the standard says', () => {
    const remainder = rawRed('float((seed * 32768 * 5 + pixel) % 1000 + 1000) * 0.0001', {
      count: 60,
      seed: 65_535,
    });
    const product = (Math.imul(Math.imul(65_535, 32_768), 5) + 7) | 0;
    const expected = (product % 1000) + 1000;
    expect(remainder({ index: 7 }) / 65_536).toBeCloseTo(expected * 0.0001, 3);
  });
});
