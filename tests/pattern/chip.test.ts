/** The printed C++ on an emulated ATmega328P: its assembly kernels, and every operation with ints of 16 bits. */
import { describe, expect, test } from 'vitest';
import { functionName, helperNames } from '../../codegen/kernels/kernels.ts';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import { Chance } from '../support/generate/chance.ts';
import {
  compiled,
  evaluated,
  lightOf,
  type PatternSource,
  programOf,
  randomMoment,
  randomSettings,
  randomZone,
} from '../support/patterns.ts';
import {
  argumentsFor,
  definedResult,
  exactResult,
  nestedCases,
  type OperationCase,
  operationCases,
} from '../support/patterns-cases.ts';
import { buildChip } from '../support/patterns-chip.ts';
import { printCases, printPrograms } from '../support/patterns-cpp.ts';

/** The library, and levels that come from each of the three formats. */
const drawn: readonly PatternSource[] = [
  ...libraryPatterns,
  { source: lightOf('vec3(turn - along, fract(time + along * 3.0), place.x * 3.0)'), parameters: [] },
];

/** So many cases fit the program memory. */
const perChip = 180;

async function compare(cases: readonly OperationCase[], most: number, seed: number): Promise<number> {
  const chip = await buildChip(printCases(cases, 'atmega328p'));
  let compared = 0;
  for (const [number, one] of cases.entries())
    for (const values of argumentsFor(one, most, seed)) {
      const result = chip.ask({ number, values });
      const expected = exactResult(one, values) | 0;
      if (result !== expected) expect(result, `${one.name} of ${values}`).toBe(expected);
      compared++;
    }
  return compared;
}

describe('F13 on the chip', () => {
  const all = operationCases(0.002, 7);
  const operations = all.filter(({ kernel }) => kernel === undefined);
  const kernels = all.filter(({ kernel }) => kernel !== undefined);

  test('every operation gives what exact integers give', async () => {
    let compared = 0;
    for (let from = 0; from < operations.length; from += perChip) {
      compared += await compare(operations.slice(from, from + perChip), 30, from);
    }
    expect(operations.length).toBeGreaterThan(1000);
    expect(compared).toBeGreaterThan(30_000);
  });

  test('operations inside of operations give what the graph gives', async () => {
    const nested = nestedCases(90, 41);
    const chip = await buildChip(printCases(nested, 'atmega328p'));
    for (const [number, one] of nested.entries())
      for (const values of argumentsFor(one, 40, 42)) {
        const result = chip.ask({ number, values });
        const expected = definedResult(one, values) | 0;
        if (result !== expected) expect(result, `${one.name} of ${values}`).toBe(expected);
      }
  });

  test('every kernel gives what the engine gives', async () => {
    expect(await compare(kernels, 1500, 11)).toBeGreaterThan(5000);
  });

  test('the three assembly multiplications, at corners and at random', async () => {
    // Full ranges at these shifts are what asks for them.
    const names = [
      'i16 mul 14 (i16 -32768..32767, i16 -32768..32767)',
      'u16 mul 16 (u16 0..65535, u16 0..65535)',
    ];
    names.push('i32 mul 16 (i32 -2147483648..2147483647, i32 -2147483648..2147483647)');
    const chosen = names.map((name) => operations.find((one) => one.name === name)!);
    const { text } = printCases(chosen, 'atmega328p');
    for (const helper of ['mul_q14', 'mul_high', 'mul_q16'])
      expect(text).toMatch(new RegExp(`${helper}\\(.*\\n.*\\n.*\\n\\s+asm`));
    const chip = await buildChip(printCases(chosen, 'atmega328p'));
    const chance = new Chance(13);
    for (const [number, one] of chosen.entries()) {
      const draw = () =>
        chance.whole((one.operands[0] as { min: number }).min, (one.operands[0] as { max: number }).max);
      const random = chance.list(4000, () => [draw(), draw()]);
      for (const values of [...argumentsFor(one, 2000, 17), ...random]) {
        const result = chip.ask({ number, values });
        const expected = exactResult(one, values) | 0;
        if (result !== expected) expect(result, `${one.name} of ${values}`).toBe(expected);
      }
    }
  });

  test('all patterns of the library draw as the graph is defined', async () => {
    const clips = drawn.map(({ source, parameters }, seed) => {
      const chance = new Chance(seed + 100);
      const zone = randomZone(chance);
      const program = programOf(compiled({ source, parameters }), randomSettings(chance, parameters), zone);
      return { zone, program, moments: chance.list(60, () => randomMoment(chance, zone)) };
    });
    const printed = printPrograms(
      clips.map(({ program }) => program),
      'atmega328p',
    );
    const chip = await buildChip(printed);
    for (const [number, { zone, program, moments }] of clips.entries())
      for (const moment of moments) {
        const { time, turn, index, placeX, placeY } = moment;
        const result = chip.ask({ number, values: [time, turn, index, placeX, placeY] });
        const levels = [result >> 16, (result >> 8) & 255, result & 255];
        expect(levels, drawn[number]!.source).toEqual(evaluated(program, moment, zone));
      }
  });

  test('no helper function goes untested', () => {
    const printed = [
      printCases(all, 'atmega328p').text,
      printPrograms(
        drawn.map(({ source, parameters }) =>
          programOf(compiled({ source, parameters }), {}, { count: 60, seed: 1 }),
        ),
        'atmega328p',
      ).text,
    ].join('\n');
    const untested = helperNames.filter((name) => !new RegExp(`\\b${functionName(name)}\\b`).test(printed));
    expect(untested).toEqual([]);
  });
});
