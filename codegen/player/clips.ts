/** A clip as a C++ function: its pattern, specialised, inside a walk through its zone. */
import type { BlendName } from '../../engine/look/blend.ts';
import type { ScoredClip } from '../../engine/look/score.ts';
import type { ParameterValue } from '../../engine/piece/schema.ts';
import type { PrintedProgram } from '../print/program.ts';
import { keyedLocal, keyedReads } from './keyed.ts';
import type { Features } from './select.ts';
import { spanZone } from './spans.ts';
import type { Tables } from './tables.ts';
import { commentLines, lineWidth, plain, quoted } from './text.ts';

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
  const { clip, printed, features } = work;
  const { uses } = printed;
  const [red, green, blue] = printed.levels;
  const places = features.places ? `, ${uses.placeX || uses.placeY ? placesTable(work) : 'nullptr'}` : '';
  return [
    '{',
    ...(uses.time ? ['  const int32_t time = clip.time;'] : []),
    ...(uses.turn ? ['  const int16_t turn = clip.turn;'] : []),
    ...keyedReads(clip.program).map((read) => `  ${keyedLocal(read, work.tables, features.eased === true)}`),
    ...printed.frameStatements.map((line) => `  ${line}`),
    `  for (Walk at = start_walk(${work.zone}${places}); next_pixel(at);) {`,
    ...(uses.index ? ['    const uint16_t index = at.index;'] : []),
    ...(uses.placeX ? ['    const int16_t place_x = at.place_x;'] : []),
    ...(uses.placeY ? ['    const int16_t place_y = at.place_y;'] : []),
    ...printed.pixelStatements.map((line) => `    ${line}`),
    ...layLines(layNames[clip.blend], ['at.pixel', red, green, blue, 'clip.amount']),
    '  }',
    '}',
  ].join('\n');
}

/** One line, or one line an argument. */
function layLines(name: string, parameters: readonly string[]): string[] {
  const line = `    ${name}(${parameters.join(', ')});`;
  if (line.length <= lineWidth) return [line];
  const indent = ' '.repeat(name.length + 5);
  return parameters.map(
    (parameter, at) =>
      `${at === 0 ? `    ${name}(` : indent}${parameter}${at === parameters.length - 1 ? ');' : ','}`,
  );
}

/** What a reader wants to know of a clip before its arithmetic. */
export function clipComment({ clip, parameters }: ClipWork): string[] {
  const given = Object.entries(parameters).map(([name, value]) => `${name} ${valueText(value)}`);
  const pixels = `${clip.zone.entries.length} ${clip.zone.entries.length === 1 ? 'pixel' : 'pixels'}`;
  const head = `Pattern ${quoted(clip.pattern)} on zone ${quoted(clip.zone.name)}, ${pixels}`;
  return commentLines(plain(given.length === 0 ? `${head}.` : `${head}: ${given.join('; ')}.`), '', '  ');
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
    values: spanZone(clip.zone).places,
    comment: `Where the pixels of zone ${quoted(clip.zone.name)} sit: x and y of each, -16384 to 16384.`,
  });
}
