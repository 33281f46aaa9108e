/** Helper functions of the patterns, as C++ text: the ones that a sketch calls, each after what it calls itself. */
import { angleTable, logarithmTable, powerTable, sineTable } from '../../engine/fixed/tables.ts';
import type { TableTaker } from '../print/program.ts';
import angle from './angle_of.inc.cpp';
import choose from './choose.inc.cpp';
import floorMod from './floor_mod.inc.cpp';
import gradientColour from './gradient_colour.inc.cpp';
import gradientPart from './gradient_part.inc.cpp';
import gradientSegment from './gradient_segment.inc.cpp';
import length2 from './length_of_2.inc.cpp';
import length3 from './length_of_3.inc.cpp';
import levelOfLowp from './level_of_lowp.inc.cpp';
import levelOfMediump from './level_of_mediump.inc.cpp';
import levelOfPhase from './level_of_phase.inc.cpp';
import log2 from './logarithm_2.inc.cpp';
import mulHighAvr from './mul_high.avr.inc.cpp';
import mulHigh from './mul_high.inc.cpp';
import mulQ14Avr from './mul_q14.avr.inc.cpp';
import mulQ14 from './mul_q14.inc.cpp';
import mulQ16Avr from './mul_q16.avr.inc.cpp';
import mulQ16 from './mul_q16.inc.cpp';
import exp2 from './power_of_2.inc.cpp';
import quotient from './quotient.inc.cpp';
import ratioOf from './ratio_of.inc.cpp';
import remainderOf from './remainder_of.inc.cpp';
import rootDigits from './root_digits.inc.cpp';
import root from './root_of.inc.cpp';
import rootMedium from './root_of_mediump.inc.cpp';
import hash from './scatter.inc.cpp';
import hash2 from './scatter_2.inc.cpp';
import sine from './sine_of.inc.cpp';
import sizeOf from './size_of.inc.cpp';
import soft from './soft_step.inc.cpp';

interface Helper {
  /** The function's name in C++, where it is another: `exp2` would meet the one of the C library. */
  readonly name?: string;
  readonly text: string;
  /** The same for an AVR with a hardware multiplier. */
  readonly avr?: string;
  readonly needs?: readonly string[];
}

/** In an order in which each stands behind what it needs. */
const helpers = {
  mul_q14: { text: mulQ14, avr: mulQ14Avr },
  mul_high: { text: mulHigh, avr: mulHighAvr },
  mul_q16: { text: mulQ16, avr: mulQ16Avr },
  smaller: { text: choose },
  larger: { text: choose },
  size_of: { text: sizeOf },
  quotient: { text: quotient },
  remainder_of: { text: remainderOf },
  floor_mod: { text: floorMod, needs: ['remainder_of'] },
  ratio_of: { text: ratioOf, needs: ['size_of'] },
  level_of_lowp: { text: levelOfLowp },
  level_of_phase: { text: levelOfPhase },
  level_of_mediump: { text: levelOfMediump },
  sine: { name: 'sine_of', text: sine },
  soft: { name: 'soft_step', text: soft, needs: ['mul_q14'] },
  root_digits: { text: rootDigits },
  root: { name: 'root_of', text: root, needs: ['root_digits'] },
  rootMedium: { name: 'root_of_mediump', text: rootMedium, needs: ['root_digits'] },
  length3: { name: 'length_of_3', text: length3, needs: ['size_of', 'root_digits'] },
  length2: { name: 'length_of_2', text: length2, needs: ['length3'] },
  exp2: { name: 'power_of_2', text: exp2 },
  log2: { name: 'logarithm_2', text: log2 },
  angle: { name: 'angle_of', text: angle, needs: ['size_of'] },
  hash: { name: 'scatter', text: hash },
  hash2: { name: 'scatter_2', text: hash2, needs: ['hash'] },
  gradient_segment: { text: gradientSegment },
  gradient_part: { text: gradientPart },
  gradient_colour: { text: gradientColour, needs: ['mul_q14'] },
} as const satisfies Record<string, Helper>;

export type HelperName = keyof typeof helpers;
export const helperNames = Object.keys(helpers) as HelperName[];

export const functionName = (helper: HelperName): string => (helpers[helper] as Helper).name ?? helper;

/** Tables that the texts name as `@name`. */
const tables = {
  sine: { type: 'int16_t', values: sineTable, comment: 'A quarter wave, 0 to 16384.' },
  power: { type: 'int32_t', values: powerTable, comment: '2 to the power of 0/64 to 64/64, in 1/65536.' },
  logarithm: {
    type: 'int32_t',
    values: logarithmTable,
    comment: 'Logarithms of 64/64 to 128/64 to the base 2, in 1/65536.',
  },
  angle: {
    type: 'int16_t',
    values: angleTable,
    comment: 'Angles with a slope of 0/64 to 64/64, in 1/65536 turns.',
  },
} as const;

/**
 * The text of the wanted helpers and of what they need.
 * @param names as `PrintedProgram.kernels` gives them, in any order, repeated or not
 * @param taker collects the tables that the helpers read
 */
export function printKernels(names: Iterable<HelperName>, chip: string, taker: TableTaker): string {
  const wanted = new Set<string>();
  const want = (name: string) => {
    const helper: Helper = helpers[name as HelperName];
    for (const need of helper.needs ?? []) want(need);
    wanted.add(name);
  };
  for (const name of names) want(name);
  const texts = helperNames
    .filter((name) => wanted.has(name))
    .map((name): string => {
      const helper: Helper = helpers[name];
      return chip === 'atmega328p' ? (helper.avr ?? helper.text) : helper.text;
    });
  return [...new Set(texts)]
    .map((text) => text.trim().replace(/@(\w+)/g, (_, table: keyof typeof tables) => tableName(table, taker)))
    .join('\n\n');
}

function tableName(table: keyof typeof tables, taker: TableTaker): string {
  const { type, values, comment } = tables[table];
  return taker.take({ prefix: 'table', name: table, type, values, comment });
}
