/** Keyframed parameters in a sketch: which a pattern reads, and how their values reach it. */
import type { KeyedFormat, KeyedParameter } from '../../engine/look/keyframes.ts';
import { inOrder } from '../../engine/pattern/ir.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import { cppType } from '../print/expression.ts';
import { keyedNames } from '../print/keyed-names.ts';
import type { Tables } from './tables.ts';
import { quoted } from './text.ts';

export interface KeyedRead {
  readonly parameter: KeyedParameter;
  /** Of the local that holds its value. */
  readonly local: string;
  /** In which the pattern reads it. */
  readonly type: string;
}

/** The keyframed parameters that are left in a program: one that cannot change the light is not. */
export function keyedReads(program: ClipProgram): KeyedRead[] {
  const { levels, keyed } = program;
  const locals = keyedNames(program);
  const types = new Map<number, string>();
  for (const node of inOrder(levels)) if (node.op === 'keyed') types.set(node.slot, cppType[node.type]);
  return keyed.flatMap((parameter, slot) => {
    const type = types.get(slot);
    return type === undefined ? [] : [{ parameter, type, local: locals[slot]! }];
  });
}

/** A linear way needs no table: the share is the part of the time itself, with the same bits. */
export function isLinear(easing: Int32Array): boolean {
  return easing.every((entry, step) => entry === step * 1024);
}

export function overshoots(easing: Int32Array): boolean {
  return easing.some((entry) => entry < 0 || entry > 65536);
}

/** Between two keys within the range only an easing that overshoots can leave it. */
export function mayLeaveRange({ keys, min, max }: KeyedParameter): boolean {
  return keys.some(({ value, easing }) => value < min || value > max || overshoots(easing));
}

/** From a value in 16.16 to what the pattern reads. */
const conversions: Record<KeyedFormat, (value: string, type: string) => string> = {
  mediump: (value) => value,
  lowp: (value, type) => `(${type})(${value} >> 2)`,
  whole: (value, type) => `(${type})(${value} >> 16)`,
  level: (value) => `level_to_lowp((uint8_t)(${value} >> 16))`,
};

/** The local that holds a parameter's value in this frame. */
export function keyedLocal({ parameter, type, local }: KeyedRead, tables: Tables, eased: boolean): string {
  const { keys, min, max, to } = parameter;
  const value = `value_at(${keysTable(parameter, tables, eased)}, ${keys.length}, clip.ms)`;
  const bounded = mayLeaveRange(parameter) ? `clamped(${value}, ${min}, ${max})` : value;
  return `const ${type} ${local} = ${conversions[to](bounded, type)};`;
}

function keysTable({ name, keys }: KeyedParameter, tables: Tables, eased: boolean): string {
  const entries = keys.map(({ atMilliseconds, value, easing }) => {
    const way = isLinear(easing) ? 'nullptr' : easingTable(easing, tables);
    return `{${[atMilliseconds, value, ...(eased ? [way] : [])].join(', ')}}`;
  });
  return tables.takeRows({
    prefix: 'keys',
    name,
    type: 'Key',
    entries,
    bytes: keys.length * (eased ? 10 : 8),
    perLine: 1,
    comment: `Keyframes of ${quoted(name)}: time in the clip, value in 1/65536${eased ? ', way to the next' : ''}.`,
  });
}

function easingTable(easing: Int32Array, tables: Tables): string {
  return tables.take({
    prefix: 'easing',
    name: '',
    type: 'int32_t',
    values: easing,
    comment: 'How far a value has come at each 1/64 of the way from one key to the next, in 1/65536.',
  });
}
