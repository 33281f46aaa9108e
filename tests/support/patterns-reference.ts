/**
 * What a pattern means in real numbers: the checked tree, walked in 64 bit floats, statement by statement,
 * as the GLSL standard tells it. It shares the parser and the type check with the engine, and nothing of the
 * lowering: no formats, no inlining, no unrolling, no ranges. Values that the standard leaves open are those
 * of the language notes.
 */
import { check } from '../../engine/pattern/check/check.ts';
import type {
  TypedExpression,
  TypedFunction,
  TypedPattern,
  TypedStatement,
  Variable,
} from '../../engine/pattern/check/typed.ts';
import commonSource from '../../engine/pattern/library/common.glsl';
import { parse } from '../../engine/pattern/parse/parser.ts';
import type { GradientStops } from '../../engine/piece/schema.ts';
import type { PatternSource, Settings } from './patterns.ts';

/** What one pixel reads, as real numbers. */
export interface RealMoment {
  readonly along: number;
  readonly placeX: number;
  readonly placeY: number;
  readonly time: number;
  readonly turn: number;
  readonly pixel: number;
  readonly count: number;
  readonly seed: number;
}

export interface ReferenceOptions {
  /** Called with every real number that is computed, and how fine it was asked to be; its result goes on. */
  readonly disturb?: (value: number, precision: 'lowp' | 'mediump') => number;
  /** Called where the standard leaves the result open, and the language notes alone settle it. */
  readonly onOpen?: (operation: string) => void;
}

export type Reference = (moment: RealMoment, settings: Settings, options?: ReferenceOptions) => number[];

type Value = readonly (number | boolean)[];
type Checked = TypedPattern & { readonly constants: readonly TypedStatement[] };

/** Red, green and blue as `light` gives them, unlimited. */
export function referenceOf({ source, parameters }: PatternSource): Reference {
  const { pattern, diagnostics } = check(
    parse(commonSource).declarations,
    parse(source).declarations,
    parameters,
  );
  if (pattern === undefined) throw new Error(`no reference: ${diagnostics[0]?.message}`);
  const names = parameters.map(({ name }) => name);
  const defaults = parameters.map((parameter) => parameter.default);
  return (moment, settings, options = {}) => {
    const settingOf = (index: number) => settings[names[index]!] ?? defaults[index]!;
    return new Walk(pattern, moment, settingOf, options).run();
  };
}

class Return {
  constructor(readonly value: Value) {}
}

class Walk {
  private readonly constants = new Map<Variable, Value>();
  private readonly disturb: (value: number, precision: 'lowp' | 'mediump') => number;

  constructor(
    private readonly pattern: Checked,
    private readonly moment: RealMoment,
    private readonly settingOf: (index: number) => unknown,
    private readonly options: ReferenceOptions,
  ) {
    this.disturb = options.disturb ?? ((value) => value);
  }

  run(): number[] {
    this.execute(this.pattern.constants, this.constants);
    return this.call(this.pattern.light, []) as number[];
  }

  private call(target: TypedFunction, args: readonly Value[]): Value {
    const environment = new Map(this.constants);
    target.parameters.forEach((parameter, i) => {
      environment.set(parameter, args[i]!);
    });
    const result = this.execute(target.body, environment);
    if (result === undefined) throw new Error(`"${target.name}" ended without a result`);
    return result.value;
  }

  private execute(
    statements: readonly TypedStatement[],
    environment: Map<Variable, Value>,
  ): Return | undefined {
    for (const statement of statements) {
      const result = this.step(statement, environment);
      if (result !== undefined) return result;
    }
    return undefined;
  }

  private step(statement: TypedStatement, environment: Map<Variable, Value>): Return | undefined {
    const read = (expression: TypedExpression) => this.read(expression, environment);
    switch (statement.kind) {
      case 'declare': {
        const { variable, value } = statement;
        environment.set(variable, value === undefined ? zeros[variable.type]! : read(value));
        return undefined;
      }
      case 'assign': {
        const { variable, components } = statement;
        const value = read(statement.value);
        const next = [...environment.get(variable)!];
        (components ?? [...next.keys()]).forEach((component, i) => {
          next[component] = value[i]!;
        });
        environment.set(variable, next);
        return undefined;
      }
      case 'block':
        return this.execute(statement.statements, environment);
      case 'if':
        return this.execute(
          read(statement.condition)[0] === true ? statement.yes : statement.no,
          environment,
        );
      case 'for':
        for (const value of statement.values) {
          environment.set(statement.variable, [value]);
          const result = this.execute(statement.body, environment);
          if (result !== undefined) return result;
        }
        return undefined;
      case 'return':
        return new Return(read(statement.value));
    }
  }

  private read(expression: TypedExpression, environment: Map<Variable, Value>): Value {
    const read = (part: TypedExpression) => this.read(part, environment);
    const { moment } = this;
    switch (expression.kind) {
      case 'number':
      case 'bool':
        return [expression.value];
      case 'variable':
        return environment.get(expression.variable)!;
      case 'given':
        return expression.name === 'place' ? [moment.placeX, moment.placeY] : [moment[expression.name]];
      case 'parameter':
        return settingValue(this.settingOf(expression.index));
      case 'gradient':
        return this.settle(
          gradientColour(
            this.settingOf(expression.index) as GradientStops,
            read(expression.position)[0] as number,
          ),
          'lowp',
        );
      case 'builtin': {
        const args = expression.args.map(read);
        const isWhole = expression.args[0]!.type === 'int' && expression.name !== 'hash';
        const run = (isWhole ? wholeFunctions : functions)[expression.name]!;
        this.tellOpen(expression.name, args);
        return this.settle(run(...args), expression.type === 'int' ? 'whole' : 'mediump');
      }
      case 'invoke':
        return this.call(expression.target, expression.args.map(read));
      case 'construct':
        return this.settle(
          construct(expression.type, expression.args.map(read)),
          expression.type === 'int' || expression.type === 'bool' ? 'whole' : 'mediump',
        );
      case 'unary':
        return read(expression.operand).map((one) =>
          expression.sign === '!' ? !one : expression.sign === '-' ? negative(one, expression.type) : one,
        );
      case 'binary':
        return this.binary(expression, environment);
      case 'choice':
        return read(read(expression.condition)[0] === true ? expression.yes : expression.no);
      case 'swizzle': {
        const of = read(expression.of);
        return expression.components.map((component) => of[component]!);
      }
    }
  }

  /** Of a sum of a thousand terms the left side leans a thousand deep: walked, as in the engine. */
  private binary(
    expression: Extract<TypedExpression, { kind: 'binary' }>,
    environment: Map<Variable, Value>,
  ): Value {
    const spine = [];
    let leftmost: TypedExpression = expression;
    while (leftmost.kind === 'binary') {
      spine.push(leftmost);
      leftmost = leftmost.left;
    }
    let left = this.read(leftmost, environment);
    for (const { sign, right: rightSide, left: leftSide, type } of spine.reverse()) {
      const right = this.read(rightSide, environment);
      if (sign === '==' || sign === '!=') {
        const same = left.every((one, i) => one === right[i]);
        left = [same === (sign === '==')];
      } else {
        const [a, b] = [left, right];
        const size = Math.max(a.length, b.length);
        const at = (value: Value, i: number) => value[value.length === 1 ? 0 : i]! as number;
        const run = (leftSide.type === 'int' ? wholeSigns : signs)[sign]!;
        this.tellOpen(leftSide.type === 'int' ? `int ${sign}` : sign, [left, right]);
        const result = Array.from({ length: size }, (_, i) => run(at(a, i), at(b, i)));
        left = this.settle(result, type === 'int' || type === 'bool' ? 'whole' : 'mediump');
      }
    }
    return left;
  }

  private tellOpen(operation: string, args: readonly Value[]): void {
    const { onOpen } = this.options;
    if (onOpen === undefined) return;
    const size = Math.max(...args.map(({ length }) => length));
    for (let i = 0; i < size; i++) {
      const parts = args.map((arg) => arg[arg.length === 1 ? 0 : i] as number);
      if (openResults[operation]?.(...parts) === true) onOpen(operation);
    }
    if (operation === 'normalize' && hypot(args[0]!) === 0) onOpen(operation);
  }

  private settle(value: Value, kind: 'whole' | 'lowp' | 'mediump'): Value {
    return kind === 'whole' ? value : value.map((one) => this.disturb(one as number, kind));
  }
}

const zeros: Record<string, Value> = { float: [0], int: [0], bool: [false], vec2: [0, 0], vec3: [0, 0, 0] };

function settingValue(setting: unknown): Value {
  if (typeof setting !== 'string') return [setting as number | boolean];
  return [1, 3, 5].map((at) => Number.parseInt(setting.slice(at, at + 2), 16) / 255);
}

/** The outer colours reach the edges; of stops at the same place the last one wins. */
export function gradientColour(stops: GradientStops, position: number): number[] {
  const x = Math.min(1, Math.max(0, position));
  const colours = stops.map(({ colour }) => settingValue(colour) as number[]);
  const before = stops.filter(({ at }) => at <= x).length - 1;
  if (before < 0) return colours[0]!;
  if (before === stops.length - 1) return colours[before]!;
  const [from, to] = [stops[before]!.at, stops[before + 1]!.at];
  const part = (x - from) / (to - from);
  return colours[before]!.map((a, channel) => a + (colours[before + 1]![channel]! - a) * part);
}

function negative(value: number | boolean, type: string): number {
  return type === 'int' ? -(value as number) | 0 : -(value as number);
}

/** Components from all arguments, in order, each turned into the wanted type; one scalar serves all of them. */
function construct(type: string, args: readonly Value[]): Value {
  const parts = args.flat();
  if (type === 'int') return [Math.trunc(Number(parts[0])) | 0];
  if (type === 'bool') return [Boolean(parts[0])];
  const size = type === 'float' ? 1 : Number(type.slice(3));
  const isSplat = args.length === 1 && parts.length === 1;
  return Array.from({ length: size }, (_, i) => Number(parts[isSplat ? 0 : i]));
}

type Sign = (a: number, b: number) => number | boolean;

const signs: Record<string, Sign> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => (b === 0 ? 0 : a / b),
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '&&': (a, b) => Boolean(a) && Boolean(b),
  '||': (a, b) => Boolean(a) || Boolean(b),
  '^^': (a, b) => Boolean(a) !== Boolean(b),
};

const wholeSigns: Record<string, Sign> = {
  ...signs,
  '+': (a, b) => (a + b) | 0,
  '-': (a, b) => (a - b) | 0,
  '*': (a, b) => Math.imul(a, b),
  '/': (a, b) => (b === 0 ? 0 : (a / b) | 0),
  '%': (a, b) => (b === 0 ? 0 : (a % b) | 0),
};

/** Mixes 16 bits: the one primitive that is ours, as the prelude spells it for a graphics chip. */
function scatter(value: number): number {
  let x = value & 0xffff;
  x ^= x >> 8;
  x = (x * 0x88b5) % 65536;
  x ^= x >> 7;
  x = (x * 0xdb2d) % 65536;
  return x ^ (x >> 9);
}

/** The largest mediump value: what `inversesqrt` gives where the standard says nothing. */
const largest = 0x7fffffff / 65536;

type Run = (...args: Value[]) => Value;
/** By component; a scalar serves all components of the others. */
const each =
  (run: (...args: number[]) => number): Run =>
  (...args) => {
    const size = Math.max(...args.map(({ length }) => length));
    return Array.from({ length: size }, (_, i) =>
      run(...args.map((arg) => arg[arg.length === 1 ? 0 : i] as number)),
    );
  };

const hypot = (value: Value) => Math.hypot(...(value as number[]));
const limit = (x: number, low: number, high: number) => Math.min(Math.max(x, low), high);

const functions: Record<string, Run> = {
  abs: each(Math.abs),
  sign: each(Math.sign),
  floor: each(Math.floor),
  ceil: each(Math.ceil),
  fract: each((x) => x - Math.floor(x)),
  mod: each((x, y) => (y === 0 ? 0 : x - y! * Math.floor(x / y!))),
  min: each((a, b) => Math.min(a, b!)),
  max: each((a, b) => Math.max(a, b!)),
  clamp: each((x, low, high) => limit(x, low!, high!)),
  mix: each((a, b, t) => a + (b! - a) * t!),
  step: each((edge, x) => (x! < edge ? 0 : 1)),
  smoothstep: each((low, high, x) => {
    if (low >= high!) return x! < high! ? 0 : 1;
    const t = limit((x! - low) / (high! - low), 0, 1);
    return t * t * (3 - 2 * t);
  }),
  sqrt: each((x) => Math.sqrt(Math.max(0, x))),
  inversesqrt: each((x) => (x <= 0 ? largest : 1 / Math.sqrt(x))),
  sin: each(Math.sin),
  cos: each(Math.cos),
  atan: each((y, x = 1) => Math.atan2(y, x)),
  pow: each((x, y) => (x <= 0 ? 0 : x ** y!)),
  exp2: each((x) => 2 ** x),
  log2: each((x) => (x <= 0 ? -16 : Math.log2(x))),
  length: (x) => [hypot(x)],
  distance: (a, b) => [hypot(a.map((one, i) => (one as number) - (b[i] as number)))],
  dot: (a, b) => [a.reduce<number>((sum, one, i) => sum + (one as number) * (b[i] as number), 0)],
  normalize: (x) => x.map((one) => (hypot(x) === 0 ? 0 : (one as number) / hypot(x))),
  radians: each((x) => (x * Math.PI) / 180),
  degrees: each((x) => (x * 180) / Math.PI),
  hash: (a, b) => [
    scatter(b === undefined ? (a[0] as number) : (a[0] as number) + scatter(b[0] as number)) / 65536,
  ],
};

/** GLSL ES 3.00: sections 4.1.3, 5.9 and chapter 8, wherever they say "undefined". */
const openResults: Record<string, (...args: number[]) => boolean> = {
  '/': (_, b) => b === 0,
  'int /': (_, b) => b === 0,
  'int %': (a, b) => a < 0 || b! <= 0,
  mod: (_, y) => y === 0,
  clamp: (_, low, high) => low! > high!,
  smoothstep: (low, high) => low! >= high!,
  sqrt: (x) => x < 0,
  inversesqrt: (x) => x <= 0,
  log2: (x) => x <= 0,
  pow: (x, y) => x < 0 || (x === 0 && y! <= 0),
  atan: (y, x = 1) => y === 0 && x === 0,
};

const wholeFunctions: Record<string, Run> = {
  abs: each((x) => Math.abs(x) | 0),
  sign: each(Math.sign),
  min: each((a, b) => Math.min(a, b!)),
  max: each((a, b) => Math.max(a, b!)),
  clamp: each((x, low, high) => limit(x, low!, high!)),
};
