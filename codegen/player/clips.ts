/** A clip as a C++ function: its pattern, specialised, inside a walk through its zone. */
import type { BlendName } from '../../engine/look/blend.ts';
import type { KeyedFormat, KeyedParameter } from '../../engine/look/keyframes.ts';
import type { ScoredClip } from '../../engine/look/score.ts';
import type { ParameterValue } from '../../engine/piece/schema.ts';
import type { PrintedProgram } from '../print/program.ts';
import { tableIsLinear } from './easings.ts';
import type { Features } from './select.ts';
import type { Tables } from './tables.ts';
import { commentLines, plain, quoted } from './text.ts';

export interface ClipWork {
  readonly clip: ScoredClip;
  readonly printed: PrintedProgram;
  /** As the piece gives them, for the comment. */
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  /** Identifier of the zone's table. */
  readonly zone: string;
  readonly tables: Tables;
  readonly features: Features;
}

const layNames: Record<BlendName, string> = {
  normal: 'lay_normal',
  multiply: 'lay_multiply',
  screen: 'lay_screen',
  darken: 'lay_darken',
  lighten: 'lay_lighten',
  'plus-lighter': 'lay_plus_lighter',
};

/** Everything of the function but its name: `{ ... }`. Equal bodies are one function. */
export function printClipBody(work: ClipWork): string {
  const { clip, printed } = work;
  const { uses } = printed;
  const [red, green, blue] = printed.levels;
  const places = work.features.places ? `, ${uses.place ? placesTable(work) : 'nullptr'}` : '';
  return [
    '{',
    ...(uses.time ? ['  const int32_t time = clip.time;'] : []),
    ...(uses.turn ? ['  const int16_t turn = clip.turn;'] : []),
    ...clip.program.keyed.map((parameter) => `  ${keyedLocal(parameter, work)}`),
    ...printed.frameStatements.map((line) => `  ${line}`),
    `  for (Walk at = start_walk(${work.zone}${places}); next_pixel(at);) {`,
    ...(uses.index ? ['    const uint16_t index = at.index;'] : []),
    ...(uses.place
      ? ['    const int16_t place_x = at.place_x;', '    const int16_t place_y = at.place_y;']
      : []),
    ...printed.pixelStatements.map((line) => `    ${line}`),
    `    ${layNames[clip.blend]}(at.pixel, ${red}, ${green}, ${blue}, clip.amount);`,
    '  }',
    '}',
  ].join('\n');
}

/** What a reader wants to know of a clip before its arithmetic. */
export function clipComment({ clip, parameters }: ClipWork): string[] {
  const given = Object.entries(parameters).map(([name, value]) => `${name} ${valueText(value)}`);
  const pixels = `${clip.zone.entries.length} ${clip.zone.entries.length === 1 ? 'pixel' : 'pixels'}`;
  const head = `Pattern ${quoted(clip.pattern)} on zone ${quoted(clip.zone.name)}, ${pixels}`;
  return commentLines(plain(given.length === 0 ? `${head}.` : `${head}: ${given.join('; ')}.`), '  ');
}

function valueText(value: ParameterValue): string {
  if (Array.isArray(value)) return value.map(({ at, colour }) => `${colour} at ${at}`).join(', ');
  if (typeof value === 'object') {
    return value.keys.map((key) => `${key.value} at ${key.atMilliseconds} ms`).join(', ');
  }
  return String(value);
}

function placesTable({ clip, tables }: ClipWork): string {
  return tables.take({
    prefix: 'places',
    name: clip.zone.name,
    type: 'int16_t',
    values: clip.zone.places,
    comment: `Where the pixels of zone ${quoted(clip.zone.name)} sit: x and y of each, -16384 to 16384.`,
  });
}

/** Type of the local and how it comes from a value in 16.16. */
const keyedFormats: Record<KeyedFormat, { type: string; convert: (value: string) => string }> = {
  mediump: { type: 'int32_t', convert: (value) => value },
  lowp: { type: 'int16_t', convert: (value) => `(int16_t)(${value} >> 2)` },
  whole: { type: 'int16_t', convert: (value) => `(int16_t)(${value} >> 16)` },
  level: { type: 'int16_t', convert: (value) => `level_to_lowp((uint8_t)(${value} >> 16))` },
};

function keyedLocal(parameter: KeyedParameter, { tables, features }: ClipWork): string {
  const { type, convert } = keyedFormats[parameter.to];
  const keys = keysTable(parameter, tables, features.eased === true);
  const value = `value_at(${keys}, ${parameter.keys.length}, clip.ms)`;
  const bounded = mayLeaveRange(parameter) ? `clamped(${value}, ${parameter.min}, ${parameter.max})` : value;
  return `const ${type} keyed_${parameter.name} = ${convert(bounded)};`;
}

/** Between two keys within the range only an easing that overshoots can leave it. */
export function mayLeaveRange({ keys, min, max }: KeyedParameter): boolean {
  return keys.some(
    ({ value, easing }) => value < min || value > max || easing.some((entry) => entry < 0 || entry > 65536),
  );
}

function keysTable(parameter: KeyedParameter, tables: Tables, eased: boolean): string {
  const keys = parameter.keys.map(({ atMilliseconds, value, easing }) => {
    if (!eased) return `{${atMilliseconds}, ${value}}`;
    const table = tableIsLinear(easing)
      ? 'nullptr'
      : tables.take({
          prefix: 'easing',
          name: '',
          type: 'int32_t',
          values: easing,
          comment: 'How far a value has come at each 1/64 of the way from one key to the next, in 1/65536.',
        });
    return `{${atMilliseconds}, ${value}, ${table}}`;
  });
  return tables.takeRows({
    prefix: 'keys',
    name: parameter.name,
    type: 'Key',
    entries: keys,
    bytes: keys.length * (eased ? 10 : 8),
    perLine: 1,
    comment: `Keyframes of ${quoted(parameter.name)}: time in the clip, value in 1/65536${eased ? ', easing' : ''}.`,
  });
}
