/** Calls of built-in functions: which arguments are spread over the components of a vector, and how. */
import type { BuiltinName } from '../check/builtins.ts';
import type { Surroundings } from './expressions.ts';
import * as integers from './integers.ts';
import type { Real, Value, Whole } from './value.ts';

type Call = (around: Surroundings, args: readonly Value[]) => Value;

const reals = (value: Value) => value as readonly Real[];

/** A function of scalars, applied to each component; a single number serves them all. */
function perComponent(run: (around: Surroundings, ...args: Real[]) => Real): Call {
  return (around, args) => {
    const size = Math.max(...args.map((arg) => arg.length));
    return Array.from({ length: size }, (_, i) =>
      run(around, ...args.map((arg) => reals(arg)[arg.length === 1 ? 0 : i]!)),
    );
  };
}

/** The same name serves whole numbers. */
function orWhole(run: (around: Surroundings, ...args: Whole[]) => Whole, otherwise: Call): Call {
  return (around, args) =>
    args[0]![0]!.kind === 'whole'
      ? [run(around, ...args.map((arg) => arg[0] as Whole))]
      : otherwise(around, args);
}

const calls: Record<BuiltinName, Call> = {
  abs: orWhole(
    ({ graph }, a) =>
      integers.extreme(graph, 'max', a, integers.combine(graph, '-', integers.wholeOf(graph, 0), a)),
    perComponent(({ functions }, x) => functions.abs(x)),
  ),
  sign: orWhole(
    ({ graph }, a) => integers.sign(graph, a),
    perComponent(({ functions }, x) => functions.sign(x)),
  ),
  floor: perComponent(({ functions }, x) => functions.floor(x)),
  ceil: perComponent(({ functions }, x) => functions.ceil(x)),
  fract: perComponent(({ functions }, x) => functions.fract(x)),
  mod: perComponent(({ functions }, x, y) => functions.mod(x, y!)),
  min: orWhole(
    ({ graph }, a, b) => integers.extreme(graph, 'min', a, b!),
    perComponent(({ functions }, a, b) => functions.min(a, b!)),
  ),
  max: orWhole(
    ({ graph }, a, b) => integers.extreme(graph, 'max', a, b!),
    perComponent(({ functions }, a, b) => functions.max(a, b!)),
  ),
  clamp: orWhole(
    ({ graph }, x, low, high) =>
      integers.extreme(graph, 'min', integers.extreme(graph, 'max', x, low!), high!),
    perComponent(({ functions }, x, low, high) => functions.clamp(x, low!, high!)),
  ),
  mix: perComponent(({ functions }, a, b, t) => functions.mix(a, b!, t!)),
  step: perComponent(({ functions }, edge, x) => functions.step(edge, x!)),
  smoothstep: perComponent(({ functions }, e0, e1, x) => functions.smoothstep(e0, e1!, x!)),
  sqrt: perComponent(({ functions }, x) => functions.sqrt(x)),
  inversesqrt: perComponent(({ functions }, x) => functions.inversesqrt(x)),
  sin: perComponent(({ functions }, x) => functions.sin(x)),
  cos: perComponent(({ functions }, x) => functions.cos(x)),
  atan: perComponent(({ functions, arithmetic }, y, x) => functions.atan(y, x ?? arithmetic.literal(1))),
  pow: perComponent(({ functions }, x, y) => functions.pow(x, y!)),
  exp2: perComponent(({ functions }, x) => functions.exp2(x)),
  log2: perComponent(({ functions }, x) => functions.log2(x)),
  length: ({ functions }, [x]) => [functions.length(reals(x!))],
  distance: ({ functions, arithmetic }, [a, b]) => [
    functions.length(reals(a!).map((one, i) => arithmetic.sub(one, reals(b!)[i]!))),
  ],
  dot: ({ functions }, [a, b]) => [functions.dot(reals(a!), reals(b!))],
  normalize: ({ functions }, [x]) => functions.normalize(reals(x!)),
  radians: perComponent(({ arithmetic }, x) => arithmetic.scale(x, Math.PI / 180)),
  degrees: perComponent(({ arithmetic }, x) => arithmetic.scale(x, 180 / Math.PI)),
  hash: ({ functions }, [a, b]) => [
    functions.hash((a![0] as Whole).node, (b?.[0] as Whole | undefined)?.node),
  ],
};

export function callBuiltin(around: Surroundings, name: BuiltinName, args: readonly Value[]): Value {
  return calls[name](around, args);
}
