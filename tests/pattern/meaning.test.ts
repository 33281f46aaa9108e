/**
 * Bit identity does not prove meaning: the engine against the pattern as it would be in real numbers, in
 * output steps (256ths of full light). The reference itself is compared with a real WebGL 2 in `world.test.ts`.
 */
import { describe, expect, test } from 'vitest';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import { Chance } from '../support/generate/chance.ts';
import {
  calmSettings,
  compiled,
  heldSettings,
  lightOf,
  type PatternSource,
  type PixelMoment,
  programOf,
  randomMoment,
  randomZone,
} from '../support/patterns.ts';
import { builtinPatterns } from '../support/patterns-builtins.ts';
import {
  type Deviation,
  deviationOf,
  isNearJump,
  onLevelScale,
  realMoment,
  unfloored,
} from '../support/patterns-error.ts';
import { generatePattern } from '../support/patterns-generate.ts';
import { referenceOf } from '../support/patterns-reference.ts';

const nineHours = 32_400;

/** Zones as pieces have them, settings over their whole ranges. */
function deviationFrom({ source, parameters }: PatternSource, seed: number, seconds: number): Deviation {
  const pattern = compiled({ source, parameters });
  const reference = referenceOf({ source, parameters });
  const chance = new Chance(seed);
  const steps: number[] = [];
  let excluded = 0;
  for (let clip = 0; clip < 30; clip++) {
    const zone = { count: chance.whole(30, 300), seed: chance.whole(0, 65_535) };
    const settings = calmSettings(chance, parameters);
    const program = programOf(pattern, settings, zone);
    // That a parameter is rounded to its format is said in its rule; here it counts as what it then is.
    const held = heldSettings(pattern, settings);
    for (let i = 0; i < 25; i++) {
      const moment = anyMoment(chance, zone.count, seconds);
      const real = realMoment(moment, zone);
      if (isNearJump(reference, real, held)) {
        excluded += 3;
        continue;
      }
      const wanted = reference(real, held).map(onLevelScale);
      for (const [i, channel] of unfloored(program, moment, zone).entries())
        steps.push(Math.abs(channel - wanted[i]!));
    }
  }
  return deviationOf(steps, excluded);
}

/** None likelier than another: at the corners, where many a pattern jumps, other tests look. */
function anyMoment(chance: Chance, count: number, seconds: number): PixelMoment {
  return {
    time: chance.whole(0, seconds * 65_536),
    turn: chance.whole(0, 16_383),
    index: chance.whole(0, count - 1),
    placeX: chance.whole(-16_384, 16_384),
    placeY: chance.whole(-16_384, 16_384),
  };
}

/**
 * The stated error of each pattern, 99th percentile in output steps. Where a level is constant, nothing of it
 * is left but the level itself, and half a step is the best that can be told.
 */
const statedErrors: Readonly<Record<string, number>> = {
  still: 0.5,
  sleeper: 0.5,
  ribbon: 0.2,
  millrace: 0.2,
  windrose: 0.5,
  wake: 0.5,
  procession: 0.5,
  tide: 0.5,
  dew: 0.5,
  brazier: 1,
  mist: 1,
  raindrop: 0.5,
};

describe('G15 the patterns of the library mean what their sources say', () => {
  test.each(libraryPatterns)('$name', ({ name, source, parameters }) => {
    const { median, high, excluded } = deviationFrom({ source, parameters }, 5, nineHours);
    expect(median).toBeLessThanOrEqual(0.5);
    expect(high).toBeLessThanOrEqual(statedErrors[name]!);
    expect(excluded).toBeLessThanOrEqual(0.02);
  });
});

describe('G14 built-in functions mean what the standard says', () => {
  test.each(Object.entries(builtinPatterns))('%s', (_, source) => {
    const { median, high, excluded } = deviationFrom({ source, parameters: [] }, 6, 300);
    expect(median).toBeLessThanOrEqual(1);
    expect(high).toBeLessThanOrEqual(4);
    expect(excluded).toBeLessThanOrEqual(0.02);
  });
});

describe('G14 where the standard leaves a result open', () => {
  const levelsOf = (expression: string, setup = '') => {
    const pattern = compiled({ source: lightOf(`vec3(${expression})`, setup), parameters: [] });
    const zone = { count: 10, seed: 3 };
    const moment = { time: 65_536, turn: 8192, index: 5, placeX: 0, placeY: -8192 };
    return unfloored(programOf(pattern, {}, zone), moment, zone)[0]!;
  };
  // Asked once of numbers in the source, which the compiler folds, and once of values that it cannot know.
  test.each([
    ['sqrt of less than 0 is 0', 'sqrt(MINUS) + 0.25', 64],
    ['inversesqrt of 0 is the largest value', 'inversesqrt(ZERO) * 0.00001', 83.886],
    ['inversesqrt of less than 0 is the largest value', 'inversesqrt(MINUS) * 0.00001', 83.886],
    ['log2 of 0 is -16', 'log2(ZERO) + 16.5', 128],
    ['log2 of less than 0 is -16', 'log2(MINUS) + 16.5', 128],
    ['pow of 0 is 0', 'pow(ZERO, 2.5) + 0.25', 64],
    ['pow of less than 0 is 0', 'pow(MINUS, 3.0) + 0.25', 64],
    ['a division by 0 is 0', '1.0 / ZERO + 0.25', 64],
    ['mod by 0 is 0', 'mod(2.75, ZERO) + 0.25', 64],
    ['atan of nothing is 0', 'atan(ZERO, ZERO) + 0.25', 64],
    ['normalize of nothing is 0', 'normalize(vec2(ZERO)).x + 0.25', 64],
    ['smoothstep with its edges swapped is a step at the second', 'smoothstep(ONE, ZERO, 0.25) - 0.5', 128],
    ['smoothstep without a width is a step', 'smoothstep(ONE, ONE, 1.0) - 0.5', 128],
    ['smoothstep without a width is 0 below it', 'smoothstep(ONE, ONE, 0.75) + 0.25', 64],
    ['clamp with its bounds swapped is the upper one', 'clamp(0.75, ONE, ZERO) + 0.25', 64],
    ['a whole division by 0 is 0', 'float(7 / NONE) + 0.25', 64],
    ['a remainder by 0 is 0', 'float(7 % NONE) + 0.25', 64],
    ['a remainder has the sign of the dividend', 'float(-7 % 4 + NONE) + 3.25', 64],
    ['a whole division cuts towards 0', 'float((-7 + NONE) / 2) + 3.25', 64],
    ['int cuts towards 0', 'float(int(-1.75 + ZERO)) + 1.25', 64],
    ['mod has the sign of the divisor', 'mod(-0.75 + ZERO, 1.0)', 64],
  ])('%s', (_, expression, level) => {
    const numbers: Record<string, string> = { ZERO: '0.0', ONE: '1.0', MINUS: '-0.5', NONE: '0' };
    const unknown: Record<string, string> = {
      ZERO: 'place.x',
      ONE: 'time',
      MINUS: 'place.y',
      NONE: 'int(place.x)',
    };
    const withWords = (words: Record<string, string>) =>
      expression.replace(/ZERO|ONE|MINUS|NONE/g, (word) => words[word]!);
    expect(Math.abs(levelsOf(withWords(numbers)) - level)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(levelsOf(withWords(unknown)) - level)).toBeLessThanOrEqual(0.5);
  });

  test('a variable without a value is 0', () => {
    expect(
      levelsOf('place.x + a + b.y + float(c) + (d ? 1.0 : 0.25)', '  float a; vec2 b; int c; bool d;\n'),
    ).toBe(64);
  });
});

describe('G14 small numbers and wide edges keep their accuracy', () => {
  const levelAt = (
    expression: string,
    seconds: number,
    more: Partial<{ index: number; turn: number }> = {},
  ) => {
    const pattern = compiled({ source: lightOf(`vec3(${expression})`), parameters: [] });
    const zone = { count: 2000, seed: 3 };
    const moment = { time: seconds * 65_536, turn: 8192, index: 5, placeX: 0, placeY: 0, ...more };
    return unfloored(programOf(pattern, {}, zone), moment, zone)[0]!;
  };

  test('a sunrise over an hour ends after an hour', () => {
    expect(levelAt('time / 3600.0', 1800)).toBeCloseTo(128, 0);
    expect(levelAt('time / 32400.0', 16_200)).toBeCloseTo(128, 0);
    expect(levelAt('time * 0.0001', 5000)).toBeCloseTo(128, 0);
  });

  test('a fraction of slow time', () => {
    expect(levelAt('fract(time * 0.001)', 20_250)).toBeCloseTo(64, 0);
  });

  test('a soft step as wide as an hour', () => {
    expect(levelAt('smoothstep(turn, 3600.0 * turn, time)', 900)).toBeCloseTo(128, 0);
  });

  test('a mix along the zone does not leap at its end', () => {
    const pattern = compiled({
      source: lightOf('vec3(mix(late, 0.0, along))', '  lowp float late = fract(time);\n'),
      parameters: [],
    });
    const zone = { count: 2000, seed: 0 };
    const program = programOf(pattern, {}, zone);
    for (let time = 0; time < 300; time++) {
      const level = unfloored(program, { time, turn: 0, index: 1999, placeX: 0, placeY: 0 }, zone)[0]!;
      expect(level).toBeLessThan(1);
    }
  });
});

describe('G14 500 generated patterns mean what they say', () => {
  /** One step of the coarser format, and the relative error of the kernels, in each operation. */
  const disturbedBy = (chance: Chance, value: number) =>
    value + (chance.next() - 0.5) * (2 ** -12 + Math.abs(value) * 2 ** -13);

  test('as far as rounding can be told from meaning', () => {
    let compared = 0;
    let asked = 0;
    for (let seed = 0; seed < 500; seed++) {
      const { source, parameters } = generatePattern(seed, { tame: true });
      const pattern = compiled({ source, parameters });
      const reference = referenceOf({ source, parameters });
      const chance = new Chance(seed);
      for (let clip = 0; clip < 3; clip++) {
        const zone = randomZone(chance);
        const settings = calmSettings(chance, parameters);
        const held = heldSettings(pattern, settings);
        const program = programOf(pattern, settings, zone);
        for (let i = 0; i < 5; i++) {
          const moment = { ...randomMoment(chance, zone), time: chance.whole(0, 100 * 65_536) };
          const real = realMoment(moment, zone);
          let isFar = false;
          const run = (isDisturbed: boolean) =>
            reference(real, held, {
              disturb: (value) => {
                // What leaves the formats wraps, and is told by a warning.
                if (!(Math.abs(value) < 16_000)) isFar = true;
                return isDisturbed ? disturbedBy(chance, value) : value;
              },
            }).map(onLevelScale);
          const exact = run(false);
          const spreads = [0, 0, 0];
          const look = (times: number) => {
            for (let time = 0; time < times; time++)
              run(true).forEach((channel, c) => {
                spreads[c] = Math.max(spreads[c]!, 2 * Math.abs(channel - exact[c]!));
              });
          };
          look(5);
          asked++;
          if (isFar || Math.max(...spreads) > 8) continue;
          const drawn = unfloored(program, moment, zone);
          const isWrong = () =>
            drawn.some((channel, c) => Math.abs(channel - exact[c]!) > 3 * spreads[c]! + 3);
          // A jump that five disturbances have missed shows in a hundred.
          if (isWrong()) look(100);
          compared++;
          if (!isFar && isWrong()) expect(drawn, `seed ${seed}:\n${source}`).toEqual(exact);
        }
      }
    }
    expect(compared / asked).toBeGreaterThan(0.4);
  });
});
