/** What a pattern is given: parameters in formats that follow from their declared ranges, and the inputs. */
import { type Range, rangeOf } from '../../fixed/integers.ts';
import type { ParameterDescription } from '../../piece/schema.ts';
import type { GivenName } from '../check/typed.ts';
import type { Graph } from '../graph.ts';
import type { Precision } from '../parse/words.ts';
import { fits } from '../range.ts';
import type { Arithmetic } from './arithmetic.ts';
import { type Format, formats, type Scalar, type Value } from './value.ts';

/** The format of one scalar of a parameter, and its first slot: a colour takes three. */
export interface ParameterSlot {
  readonly index: number;
  readonly first: number;
  readonly count: 1 | 3;
  readonly holds: 'lowp' | 'mediump' | 'whole' | 'truth' | 'level';
}

/** Slots in the order of the descriptions; a gradient has none. */
export function slotsFor(
  descriptions: readonly ParameterDescription[],
  precisions: ReadonlyMap<number, Precision>,
): ParameterSlot[] {
  let first = 0;
  return descriptions.flatMap((description, index): ParameterSlot[] => {
    const precision = precisions.get(index);
    if (description.kind === 'gradient' || precision === undefined) return [];
    const count = description.kind === 'colour' ? 3 : 1;
    const slot: ParameterSlot = { index, first, count, holds: holdsOf(description, precision) };
    first += count;
    return [slot];
  });
}

function holdsOf(description: ParameterDescription, precision: Precision): ParameterSlot['holds'] {
  if (description.kind === 'colour') return 'level';
  if (description.kind === 'whole') return 'whole';
  if (description.kind === 'yes-no') return 'truth';
  if (description.kind !== 'number' || precision === 'mediump') return 'mediump';
  return fits(rangeOfNumber(description, 'lowp'), 'i16') ? 'lowp' : 'mediump';
}

function rangeOfNumber({ min, max }: { min: number; max: number }, format: Format): Range {
  const one = 2 ** formats[format].fraction;
  return { min: Math.round(min * one), max: Math.round(max * one) };
}

export function parameterValue(
  graph: Graph,
  arithmetic: Arithmetic,
  description: ParameterDescription,
  slot: ParameterSlot,
  precision: Precision,
): Value {
  return Array.from({ length: slot.count }, (_, i): Scalar => {
    const number = slot.first + i;
    if (slot.holds === 'truth') return { kind: 'truth', node: graph.parameter(number, 'bool', rangeOf.bool) };
    if (slot.holds === 'level') {
      return arithmetic.real('lowp', graph.parameter(number, 'i16', { min: 0, max: 16384 }), 'lowp');
    }
    const bounds = description as { min: number; max: number };
    if (slot.holds === 'whole') {
      const type = fits(bounds, 'i16') ? 'i16' : 'i32';
      return { kind: 'whole', node: graph.parameter(number, type, { min: bounds.min, max: bounds.max }) };
    }
    const format = slot.holds;
    const node = graph.parameter(number, formats[format].type, rangeOfNumber(bounds, format));
    return arithmetic.real(format, node, precision);
  });
}

/** Nine hours, the longest look, in Q16.16 seconds. */
const longestTime = 32400 * 65536;
const mostPixels = 2000;

export function givenValue(graph: Graph, arithmetic: Arithmetic, name: GivenName): Value {
  switch (name) {
    case 'along': {
      const scaled = graph.mul(
        'u32',
        graph.cast('u32', arithmetic.index()),
        graph.zone('inverse', rangeOf.u32),
        0,
      );
      return [arithmetic.real('phase', graph.shr('u16', scaled, 16), 'lowp', { kind: 'along' })];
    }
    case 'place':
      return (['placeX', 'placeY'] as const).map((axis) =>
        arithmetic.real('lowp', graph.input(axis, 'i16', { min: -16384, max: 16384 }), 'lowp'),
      );
    case 'pixel':
      return [{ kind: 'whole', node: graph.cast('i16', arithmetic.index()) }];
    case 'count':
      return [{ kind: 'whole', node: graph.cast('i16', graph.zone('count', { min: 1, max: mostPixels })) }];
    case 'time':
      return [
        arithmetic.real('mediump', graph.input('time', 'i32', { min: 0, max: longestTime }), 'mediump'),
      ];
    case 'turn':
      return [arithmetic.real('lowp', graph.input('turn', 'i16', { min: 0, max: 16383 }), 'lowp')];
    case 'seed':
      return [{ kind: 'whole', node: graph.cast('i32', graph.zone('seed', rangeOf.u16)) }];
  }
}
