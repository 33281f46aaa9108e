/** From a clip of a piece to its program: which pattern it names, and what fills the pattern's parameters. */
import { type Checked, type Diagnostic, hasErrors } from '../diagnostic.ts';
import { buildGradient, levelsOfColour, levelToLowp } from '../fixed/gradient.ts';
import type { Zone } from '../layout/layout.ts';
import type { KeyedFormat, KeyedParameter } from '../look/keyframes.ts';
import type { Clip, GradientStops, ParameterDescription, ParameterValue, Piece } from '../piece/schema.ts';
import { type Compilation, type CompiledPattern, compilePattern } from './compile.ts';
import { isKeyed, keyedParameter } from './keyed.ts';
import { findLibraryPattern } from './library.ts';
import type { ParameterSlot } from './lower/parameters.ts';
import type { ClipProgram } from './program.ts';
import { type Filling, specialise } from './specialise.ts';

interface Source {
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

/** Compiled once for each definition, as long as it lives: a library's is there for good. */
const compilations = new WeakMap<Source, Compilation>();

export function compileOnce(definition: Source): Compilation {
  let compilation = compilations.get(definition);
  if (compilation === undefined) {
    compilation = compilePattern(definition.source, definition.parameters);
    compilations.set(definition, compilation);
  }
  return compilation;
}

/** What the compiler says of the piece's own patterns, whether a clip plays them or not. */
export function checkOwnPatterns(piece: Piece): Diagnostic[] {
  return piece.patterns.flatMap((definition, i) =>
    compileOnce(definition).diagnostics.map((one) => ({ ...one, path: `patterns[${i}].source` })),
  );
}

/**
 * The program of one clip of a checked piece. A pattern that does not compile gives no value; what is
 * wrong with it is told once, by `checkOwnPatterns`.
 */
export function compileClip(request: {
  readonly piece: Piece;
  readonly clip: Clip;
  readonly zone: Zone;
  readonly path: string;
}): Checked<ClipProgram> {
  const { piece, clip, zone, path } = request;
  const definition =
    findLibraryPattern(clip.pattern) ?? piece.patterns.find((pattern) => pattern.name === clip.pattern);
  if (definition === undefined) {
    const diagnostic: Diagnostic = {
      code: 'unknown-pattern',
      severity: 'error',
      message: `There is no pattern "${clip.pattern}".`,
      advice: 'Name a pattern of the library with its revision, or one of this piece.',
      path: `${path}.pattern`,
    };
    return { diagnostics: [diagnostic] };
  }
  const { pattern, diagnostics } = compileOnce(definition);
  if (pattern === undefined || hasErrors(diagnostics)) return { diagnostics: [] };
  return { value: fillOnce(pattern, clip, zone.count), diagnostics: [] };
}

interface Filled {
  readonly pattern: CompiledPattern;
  readonly seed: number;
  readonly count: number;
  readonly program: ClipProgram;
}

/** An edit elsewhere leaves a clip's parameters the very same, and so its program, and what is made of that. */
const filled = new WeakMap<Clip['parameters'], Filled>();

function fillOnce(pattern: CompiledPattern, clip: Clip, count: number): ClipProgram {
  const { parameters, seed } = clip;
  const known = filled.get(parameters);
  if (known?.pattern === pattern && known.seed === seed && known.count === count) return known.program;
  const program = fillPattern(pattern, clip, count);
  filled.set(parameters, { pattern, seed, count, program });
  return program;
}

function fillPattern(pattern: CompiledPattern, clip: Clip, count: number): ClipProgram {
  const keyed: KeyedParameter[] = [];
  const fillings = pattern.slots.flatMap((slot) => {
    const description = pattern.parameters[slot.index]!;
    const value = clip.parameters[description.name] ?? description.default;
    return fill(slot, description, value, keyed);
  });
  const gradients = pattern.parameters.map((description) => {
    const stops = (clip.parameters[description.name] ?? description.default) as GradientStops;
    return buildGradient(description.name, description.kind === 'gradient' ? stops : black);
  });
  const { levels, names } = specialise(pattern, fillings, {
    count,
    inverse: count === 1 ? 0 : Math.floor(2 ** 32 / count),
    seed: clip.seed,
  });
  return { levels, gradients, keyed, names };
}

/** Gradients stand by the index of their description, so that the others need a place-holder. */
const black: GradientStops = [{ at: 0, colour: '#000000' }];

/** The scalars of one parameter; a keyframed one adds its course to `keyed` and is read from there. */
function fill(
  slot: ParameterSlot,
  description: ParameterDescription,
  value: ParameterValue,
  keyed: KeyedParameter[],
): Filling[] {
  if (!isKeyed(value)) return rawValues(slot, value).map((raw) => ({ raw }));
  return Array.from({ length: slot.count }, (_, channel) => {
    keyed.push(keyedParameter(description, value, keyedFormats[slot.holds], channel));
    return { keyedSlot: keyed.length - 1 };
  });
}

function rawValues({ holds }: ParameterSlot, value: ParameterValue): number[] {
  switch (holds) {
    case 'truth':
    case 'whole':
      return [Number(value)];
    case 'level':
      return levelsOfColour(value as string).map(levelToLowp);
    case 'lowp':
      return [Math.round((value as number) * 16384)];
    case 'mediump':
      return [Math.round((value as number) * 65536)];
  }
}

const keyedFormats: Record<ParameterSlot['holds'], KeyedFormat> = {
  truth: 'whole',
  whole: 'whole',
  level: 'level',
  lowp: 'lowp',
  mediump: 'mediump',
};
