/** Patterns for tests: compiled, filled in for a clip, and run in each of the ways that must agree. */
import { hasErrors } from '../../engine/diagnostic.ts';
import { buildGradient, type GradientTable, levelsOfColour } from '../../engine/fixed/gradient.ts';
import { wrap } from '../../engine/fixed/integers.ts';
import { type CompiledPattern, compilePattern } from '../../engine/pattern/compile.ts';
import { evaluate, type Inputs, operate } from '../../engine/pattern/evaluate.ts';
import { inOrder, type Node, operandsOf } from '../../engine/pattern/ir.ts';
import { compileProgram } from '../../engine/pattern/javascript.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import { type Filling, specialise } from '../../engine/pattern/specialise.ts';
import type { GradientStops, ParameterDescription } from '../../engine/piece/schema.ts';
import type { Chance } from './generate/chance.ts';

export interface PatternSource {
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

/** A present value of a parameter: number, whole, yes-no, colour or stops, as its kind asks. */
export type Setting = number | boolean | string | GradientStops;
export type Settings = Readonly<Record<string, Setting>>;

/** What one pixel at one moment reads. `time` is Q16.16, `turn`, `placeX` and `placeY` are Q2.14. */
export interface PixelMoment {
  readonly time: number;
  readonly turn: number;
  readonly index: number;
  readonly placeX: number;
  readonly placeY: number;
}

export interface ZoneSetting {
  readonly count: number;
  readonly seed: number;
}

export function compiled({ source, parameters }: PatternSource): CompiledPattern {
  const { pattern, diagnostics } = compilePattern(source, parameters);
  if (pattern === undefined) {
    const told = diagnostics.map(({ code, message, span }) => `${span?.line} ${code}: ${message}`);
    throw new Error(`the pattern does not compile:\n${told.join('\n')}\n${source}`);
  }
  if (hasErrors(diagnostics)) throw new Error('a compiled pattern comes with errors');
  return pattern;
}

/** The codes of what is wrong, with the source text that each stands on. */
export function faultsOf(source: string, parameters: readonly ParameterDescription[] = []): string[] {
  return compilePattern(source, parameters).diagnostics.map(
    ({ code, span }) => `${code}: ${source.slice(span!.start, span!.end)}`,
  );
}

/** `light` around an expression for its colour. */
export const lightOf = (colour: string, before = '') =>
  `lowp vec3 light() {\n${before}  return ${colour};\n}\n`;

/** Raw scalars of all slots for these settings, by the rules F11: written here a second time on purpose. */
export function rawParameters({ slots, parameters }: CompiledPattern, settings: Settings): number[] {
  return slots.flatMap(({ index, holds }) => {
    const description = parameters[index]!;
    const value = settings[description.name] ?? description.default;
    switch (holds) {
      case 'level':
        return levelsOfColour(value as string).map((level) => Math.round((level * 16384) / 255));
      case 'lowp':
        return [Math.round((value as number) * 2 ** 14)];
      case 'mediump':
        return [Math.round((value as number) * 2 ** 16)];
      default:
        return [Number(value)];
    }
  });
}

/** The same settings as the engine holds them: numbers rounded to the step of their format. */
export function heldSettings(pattern: CompiledPattern, settings: Settings): Settings {
  const held: Record<string, Setting> = { ...settings };
  for (const { index, holds } of pattern.slots) {
    const { name, default: value } = pattern.parameters[index]!;
    const step = holds === 'lowp' ? 2 ** 14 : 2 ** 16;
    if (holds === 'lowp' || holds === 'mediump')
      held[name] = Math.round(((settings[name] ?? value) as number) * step) / step;
  }
  return held;
}

const black: GradientStops = [{ at: 0, colour: '#000000' }];

export function gradientsOf({ parameters }: CompiledPattern, settings: Settings): GradientTable[] {
  return parameters.map((description) =>
    buildGradient(
      description.name,
      description.kind === 'gradient'
        ? ((settings[description.name] ?? description.default) as GradientStops)
        : black,
    ),
  );
}

/** As a clip without keyframes is made ready. */
export function programOf(pattern: CompiledPattern, settings: Settings, zone: ZoneSetting): ClipProgram {
  const fillings: Filling[] = rawParameters(pattern, settings).map((raw) => ({ raw }));
  const { levels, names } = specialise(pattern, fillings, zoneFields(zone));
  return { levels, names, gradients: gradientsOf(pattern, settings), keyed: [] };
}

export function zoneFields({ count, seed }: ZoneSetting) {
  return { count, seed, inverse: count === 1 ? 0 : Math.floor(2 ** 32 / count) };
}

/** What the leaves of a graph read at a moment. */
export function inputsOf(moment: PixelMoment, zone: ZoneSetting, rest: Omit<Inputs, 'input'> = {}): Inputs {
  const readings: Record<string, number> = { ...moment, ...zoneFields(zone) };
  return { ...rest, input: (name) => readings[name]! };
}

/** Three levels of one pixel by the generated JavaScript. */
export function drawer(program: ClipProgram): (moment: PixelMoment, keyed?: Int32Array) => number[] {
  const draw = compileProgram(program);
  const out = new Uint8Array(3);
  return ({ time, turn, index, placeX, placeY }, keyed = new Int32Array(0)) => {
    draw(out, Uint16Array.of(index), Int16Array.of(placeX, placeY), time, turn, keyed);
    return [...out];
  };
}

export function evaluated(program: ClipProgram, moment: PixelMoment, zone: ZoneSetting): number[] {
  return evaluate(program.levels, inputsOf(moment, zone, { gradients: program.gradients }));
}

/**
 * Every node's value, for the tests of ranges.
 * @param freely chooses the value of a node instead of computing it, where it gives one
 */
export function valuesOfNodes(
  roots: readonly Node[],
  inputs: Inputs,
  freely: (node: Node) => number | undefined = () => undefined,
): Map<Node, number> {
  const values = new Map<Node, number>();
  for (const node of inOrder(roots)) {
    const operands = operandsOf(node).map((operand) => values.get(operand)!);
    values.set(node, freely(node) ?? operate(node, operands, inputs));
  }
  return values;
}

export const longestTime = 32400 * 65536;
const corners = { time: [0, 1, 65535, 65536, longestTime - 1, longestTime], turn: [0, 1, 8192, 16383] };

/** Any moment a clip may meet; the ends of each range more often than chance would give them. */
export function randomMoment(chance: Chance, { count }: ZoneSetting): PixelMoment {
  const place = () => (chance.flip(0.2) ? chance.pick([-16384, 0, 16384]) : chance.whole(-16384, 16384));
  return {
    time: chance.flip(0.2) ? chance.pick(corners.time) : Math.floor(longestTime * chance.next() ** 3),
    turn: chance.flip(0.2) ? chance.pick(corners.turn) : chance.whole(0, 16383),
    index: chance.flip(0.3) ? chance.pick([0, count - 1]) : chance.whole(0, count - 1),
    placeX: place(),
    placeY: place(),
  };
}

export function randomZone(chance: Chance): ZoneSetting {
  return {
    count: chance.flip(0.4) ? chance.pick([1, 2, 3, 2000]) : chance.whole(1, 2000),
    seed: chance.flip(0.3) ? chance.pick([0, 1, 65535]) : chance.whole(0, 65535),
  };
}

/** Present values within the declared ranges, at their ends every third time. */
export function randomSettings(
  chance: Chance,
  parameters: readonly ParameterDescription[],
): Record<string, Setting> {
  return Object.fromEntries(
    parameters.map((description) => [description.name, randomSetting(chance, description)]),
  );
}

function randomSetting(chance: Chance, description: ParameterDescription): Setting {
  switch (description.kind) {
    case 'number': {
      const { min, max } = description;
      return chance.flip(0.3) ? chance.pick([min, max]) : chance.number(min, max, 5);
    }
    case 'whole': {
      const { min, max } = description;
      return chance.flip(0.3) ? chance.pick([min, max]) : chance.whole(min, max);
    }
    case 'yes-no':
      return chance.flip();
    case 'colour':
      return chance.colour();
    case 'gradient':
      return randomStops(chance);
  }
}

/** One to sixteen stops, now and then two at the same place: a hard edge. */
export function randomStops(chance: Chance): GradientStops {
  const count = chance.flip(0.1) ? 16 : chance.whole(1, 5);
  const places = chance.list(count, () =>
    chance.flip(0.2) ? chance.pick([0, 0.5, 1]) : chance.number(0, 1, 3),
  );
  return places.sort((a, b) => a - b).map((at) => ({ at, colour: chance.colour() }));
}

/** Stops as a maker sets them: apart from each other, so that the colour runs and does not leap. */
export function calmStops(chance: Chance): GradientStops {
  const count = chance.whole(1, 6);
  return chance.list(count, (i) => ({
    at: Number(((i + chance.number(0.2, 0.8)) / count).toFixed(3)),
    colour: chance.colour(),
  }));
}

/** Random settings, but for gradients with hard or nearly hard edges. */
export function calmSettings(
  chance: Chance,
  parameters: readonly ParameterDescription[],
): Record<string, Setting> {
  const settings = randomSettings(chance, parameters);
  for (const { kind, name } of parameters) if (kind === 'gradient') settings[name] = calmStops(chance);
  return settings;
}

/** A raw value for a keyed slot, within what its node says. */
export const rawWithin = (chance: Chance, { min, max, type }: Node) =>
  wrap[type](chance.flip(0.3) ? chance.pick([min, max]) : chance.whole(min, max));
