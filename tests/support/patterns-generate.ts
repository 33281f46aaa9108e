/**
 * Random patterns over the whole language: all types and precisions, functions and overloads, loops,
 * conditions, early returns, built-ins, swizzles, shadowed names. Every one is meant to compile; the rare
 * one that a bound refuses (too much work) is drawn again.
 */
import { compilePattern } from '../../engine/pattern/compile.ts';
import type { ParameterDescription } from '../../engine/piece/schema.ts';
import { Chance } from './generate/chance.ts';
import { type PatternSource, randomStops } from './patterns.ts';

export type Type = 'float' | 'vec2' | 'vec3' | 'int' | 'bool';
const types: readonly Type[] = ['float', 'float', 'float', 'vec2', 'vec3', 'int', 'bool'];
const realTypes: readonly Type[] = ['float', 'vec2', 'vec3'];
const sizes: Record<Type, number> = { float: 1, vec2: 2, vec3: 3, int: 1, bool: 1 };

/** An expression with how tightly it binds, so that brackets stand only where the grammar needs them. */
interface Text {
  readonly text: string;
  readonly binds: number;
}

const binding = {
  choice: 1,
  or: 2,
  xor: 3,
  and: 4,
  equal: 5,
  compare: 6,
  sum: 7,
  product: 8,
  unary: 9,
  atom: 10,
};

interface Name {
  readonly text: string;
  readonly type: Type;
  readonly writable: boolean;
  readonly constant: boolean;
}

interface Signature {
  readonly name: string;
  readonly takes: readonly Type[];
  readonly gives: Type;
}

export interface GeneratorOptions {
  /** Expressions nest this deep. */
  readonly depth?: number;
  /** Leave out what a 32 bit float and our formats cannot be expected to agree on: see `patterns-reference.ts`. */
  readonly tame?: boolean;
}

export function generatePattern(seed: number, options: GeneratorOptions = {}): PatternSource {
  for (let attempt = 0; attempt < 20; attempt++) {
    const chance = new Chance(seed * 20 + attempt);
    const writer = new PatternWriter(chance, options);
    const pattern = writer.pattern();
    const { diagnostics } = compilePattern(pattern.source, pattern.parameters);
    const errors = diagnostics.filter(({ severity }) => severity === 'error');
    if (errors.length === 0) return pattern;
    const isBound = errors.every(({ code }) => code === 'too-much-work' || code === 'source-too-long');
    if (!isBound)
      throw new Error(`seed ${seed}: ${errors[0]!.code} ${errors[0]!.message}\n${pattern.source}`);
  }
  throw new Error(`seed ${seed} gave twenty patterns that are too large`);
}

class PatternWriter {
  private readonly frames: Name[][] = [[]];
  private readonly functions: Signature[] = [
    { name: 'noise', takes: ['float'], gives: 'float' },
    { name: 'noise', takes: ['vec2'], gives: 'float' },
    { name: 'hue', takes: ['float'], gives: 'vec3' },
  ];
  private readonly parameters: ParameterDescription[] = [];
  private readonly gradients: string[] = [];
  private readonly depth: number;
  private turns = 1;
  private serial = 0;

  constructor(
    private readonly chance: Chance,
    private readonly options: GeneratorOptions,
  ) {
    this.depth = options.depth ?? 3;
  }

  pattern(): PatternSource {
    const { chance } = this;
    for (const [text, type] of given) this.frames[0]!.push({ text, type, writable: false, constant: false });
    const parts = [
      ...chance.list(chance.whole(0, 4), () => this.parameter()),
      ...chance.list(chance.whole(0, 2), () => `const ${this.constant()}\n`),
      ...chance.list(chance.whole(0, 2), () => this.function()),
      this.body('lowp vec3 light()', 'vec3', []),
    ];
    return { source: parts.join(''), parameters: this.parameters };
  }

  private parameter(): string {
    const { chance } = this;
    const name = this.fresh();
    const label = 'Tide table';
    const kind = chance.pick(['number', 'number', 'whole', 'yes-no', 'colour', 'gradient'] as const);
    if (kind === 'gradient') {
      this.parameters.push({ kind, name, label, default: randomStops(chance) });
      this.gradients.push(`gradient_${name}`);
      return '';
    }
    const types = { number: 'float', whole: 'int', 'yes-no': 'bool', colour: 'vec3' } as const;
    const type: Type = types[kind];
    const [min, max] = this.options.tame
      ? chance.pick([
          [0, 1],
          [-1, 1],
          [1, 4],
        ])
      : chance.pick([
          [0, 1],
          [-1, 1],
          [0, 2],
          [1, 60],
          [-16383, 16383],
          [5, 5],
          [-3, 100],
        ]);
    if (kind === 'number' || kind === 'whole')
      this.parameters.push({ kind, name, label, min: min!, max: max!, default: min! });
    else if (kind === 'yes-no') this.parameters.push({ kind, name, label, default: chance.flip() });
    else this.parameters.push({ kind, name, label, default: chance.colour() });
    this.frames[0]!.push({ text: name, type, writable: false, constant: false });
    return `uniform ${this.precision(type)}${type} ${name};\n`;
  }

  private precision(type: Type): string {
    return type === 'bool' ? '' : this.chance.pick(['lowp ', 'mediump ', '']);
  }

  private constant(): string {
    const type = this.chance.pick(types);
    const value = this.loose(this.constantOf(type, 2));
    const name = this.declare(type, { writable: false, constant: true });
    return `${this.precision(type)}${type} ${name} = ${value};`;
  }

  private function(): string {
    const { chance } = this;
    const gives = chance.pick(types);
    const takes = chance.list(chance.whole(0, 3), () => chance.pick(types));
    // A third of them overload a function that is there already, if the arguments tell them apart.
    const overloadable = this.functions.filter(({ name }) => name !== 'noise' && name !== 'hue');
    const other = chance.flip(0.3) && overloadable.length > 0 ? chance.pick(overloadable) : undefined;
    const isTwin = this.functions.some(
      (one) => one.name === other?.name && one.takes.join() === takes.join(),
    );
    const name = other !== undefined && !isTwin ? other.name : this.fresh();
    this.frames.push([]);
    const parameters = takes.map((type) => `${this.precision(type)}${type} ${this.declare(type)}`);
    const text = this.body(
      `${this.precision(gives)}${gives} ${name}(${parameters.join(', ')})`,
      gives,
      takes,
    );
    this.frames.pop();
    this.functions.push({ name, takes, gives });
    return text;
  }

  private body(head: string, gives: Type, takes: readonly Type[]): string {
    this.frames.push([]);
    const statements = this.chance.list(this.chance.whole(0, takes.length > 0 ? 3 : 5), () =>
      this.statement('  ', gives, 2),
    );
    const result = head === 'lowp vec3 light()' ? this.colour() : this.loose(this.of(gives, this.depth));
    this.frames.pop();
    return `${head} {\n${statements.join('')}  return ${result};\n}\n`;
  }

  /** Most patterns end where something can be seen: inside of 0 to 1, and different from pixel to pixel. */
  private colour(): string {
    const { chance } = this;
    const visible = () => `fract(${this.loose(this.of('float', this.depth))})`;
    return chance.pick([
      () => `vec3(${visible()}, ${visible()}, ${visible()})`,
      () => `fract(${this.loose(this.of('vec3', this.depth))})`,
      () => `clamp(${this.loose(this.of('vec3', this.depth))}, 0.0, 1.0) * ${visible()}`,
      () => `mix(vec3(${visible()}), hue(${visible()}), ${visible()})`,
      () => this.loose(this.of('vec3', this.depth)),
    ])();
  }

  private statement(indent: string, gives: Type, depth: number): string {
    const { chance } = this;
    const inner = `${indent}  `;
    const block = () => {
      this.frames.push([]);
      const text = chance.list(chance.whole(0, 2), () => this.statement(inner, gives, depth - 1)).join('');
      this.frames.pop();
      return `{\n${text}${indent}}`;
    };
    const targets = this.names().filter(({ writable }) => writable);
    const kinds = [
      'declare',
      'declare',
      'constant',
      'assign',
      'assign',
      'if',
      'for',
      'block',
      'return',
    ] as const;
    const kind = chance.pick(kinds);
    if (kind === 'assign' && targets.length > 0)
      return `${indent}${this.assignment(chance.pick(targets))};\n`;
    if (kind === 'if' && depth > 0) {
      const condition = this.loose(this.of('bool', 2));
      const yes = block();
      const otherwise = chance.flip() ? ` else ${block()}` : '';
      return `${indent}if (${condition}) ${yes}${otherwise}\n`;
    }
    if (kind === 'for' && depth > 0 && this.turns <= 8) return this.loop(indent, gives, depth);
    if (kind === 'block' && depth > 0) return `${indent}${block()}\n`;
    if (kind === 'return' && depth > 0) {
      const condition = this.loose(this.of('bool', 2));
      return `${indent}if (${condition}) return ${this.loose(this.of(gives, 2))};\n`;
    }
    if (kind === 'constant') return `${indent}const ${this.constant()}\n`;
    return `${indent}${this.declaration()}\n`;
  }

  private declaration(): string {
    const { chance } = this;
    const type = chance.pick(types);
    const head = `${this.precision(type)}${type}`;
    // The standard leaves a variable without a value undefined, so that only the engine itself can be asked about it.
    if (!this.options.tame && chance.flip(0.1)) return `${head} ${this.declare(type)};`;
    const value = this.loose(this.of(type, this.depth));
    const first = `${head} ${this.declare(type)} = ${value}`;
    if (chance.flip(0.8)) return `${first};`;
    const second = this.loose(this.of(type, 1));
    return `${first}, ${this.declare(type)} = ${second};`;
  }

  private assignment({ text: name, type }: Name): string {
    const { chance } = this;
    if (type === 'bool') return `${name} = ${this.loose(this.of('bool', 2))}`;
    if (type === 'int') {
      if (chance.flip(0.3)) return `${name}${chance.pick(['++', '--'])}`;
      return `${name} ${chance.pick(['=', '+=', '-=', '*=', '/=', '%='])} ${this.loose(this.of('int', 2))}`;
    }
    if (chance.flip(0.1)) return `${name}${chance.pick(['++', '--'])}`;
    const sign = chance.pick(['=', '+=', '-=', '*=', '/=']);
    if (type !== 'float' && chance.flip(0.4)) {
      const field = this.distinctField(sizes[type]);
      const wanted = field.length === 1 ? 'float' : (`vec${field.length}` as Type);
      return `${name}.${field} ${sign} ${this.loose(this.of(wanted, 2))}`;
    }
    const source = sign === '=' || chance.flip() ? type : 'float';
    return `${name} ${sign} ${this.loose(this.of(source, 2))}`;
  }

  private loop(indent: string, gives: Type, depth: number): string {
    const { chance } = this;
    const turns = chance.whole(0, 5);
    const name = this.fresh();
    const head = chance.pick([
      `${name} = 0; ${name} < ${turns}; ${name}++`,
      `${name} = ${turns}; ${name} > 0; ${name}--`,
      `${name} = -2; ${name} <= ${turns}; ${name} += 2`,
      `${name} = 1; ${name} != ${2 ** Math.max(1, turns)}; ${name} *= 2`,
    ]);
    this.frames.push([{ text: name, type: 'int', writable: false, constant: false }]);
    this.turns *= 6;
    const body = chance
      .list(chance.whole(1, 2), () => this.statement(`${indent}  `, gives, depth - 1))
      .join('');
    this.turns /= 6;
    this.frames.pop();
    return `${indent}for (int ${head}) {\n${body}${indent}}\n`;
  }

  private of(type: Type, depth: number): Text {
    const { chance } = this;
    const candidates = this.names().filter((name) => name.type === type);
    if (depth <= 0) {
      return candidates.length > 0 && chance.flip(0.75)
        ? atom(chance.pick(candidates).text)
        : this.literal(type);
    }
    const writers: Record<Type, () => Text> = {
      float: () => this.float(depth - 1),
      vec2: () => this.vector('vec2', depth - 1),
      vec3: () => this.vector('vec3', depth - 1),
      int: () => this.int(depth - 1),
      bool: () => this.bool(depth - 1),
    };
    if (chance.flip(0.1)) return this.choice(type, depth - 1);
    const callable = this.functions.filter(({ gives }) => gives === type);
    if (chance.flip(0.12) && callable.length > 0 && this.turns <= 8) {
      const { name, takes } = chance.pick(callable);
      if (!this.isHidden(name)) return this.call(name, takes, depth - 1);
    }
    return writers[type]();
  }

  private constantOf(type: Type, depth: number): Text {
    const { chance } = this;
    const known = this.names().filter((name) => name.constant && name.type === type);
    if (known.length > 0 && chance.flip(0.3)) return atom(chance.pick(known).text);
    if (depth === 0 || chance.flip(0.3)) return this.literal(type);
    const a = () => this.constantOf(type, depth - 1);
    if (type === 'bool') return infix(binding.and, '&&', a(), a());
    if (type === 'int') return infix(binding.sum, chance.pick(['+', '-']), a(), a());
    if (type === 'float') {
      return chance.pick([
        () => infix(binding.sum, chance.pick(['+', '-']), a(), a()),
        () => infix(binding.product, chance.pick(['*', '/']), a(), this.literal('float')),
        () => atom(`${chance.pick(['abs', 'floor', 'fract', 'sin', 'cos', 'radians'])}(${a().text})`),
      ])();
    }
    return chance.pick([
      () => atom(`${type}(${this.constantOf('float', depth - 1).text})`),
      () => infix(binding.sum, '+', a(), a()),
    ])();
  }

  private literal(type: Type): Text {
    const { chance } = this;
    const real = () => {
      const value = chance.pick([0, 1, 0.5, 2, chance.number(0, 1, 4), chance.number(0, 8, 3)]);
      const text = String(value);
      if (text.includes('e')) return value.toFixed(6);
      return text.includes('.')
        ? chance.pick([text, text.replace(/^0/, ''), `${text}e0`])
        : `${text}${chance.pick(['.0', '.', '.0f', 'e0'])}`;
    };
    if (type === 'bool') return atom(chance.pick(['true', 'false']));
    if (type === 'int') return atom(String(chance.whole(0, this.options.tame ? 5 : 40)));
    if (type === 'float') return atom(real());
    const parts = chance.flip(0.4) ? [real()] : chance.list(sizes[type], real);
    return atom(`${type}(${parts.join(', ')})`);
  }

  private float(depth: number): Text {
    const { chance } = this;
    const a = (type: Type = 'float') => this.of(type, depth);
    const vector = () => chance.pick(['vec2', 'vec3'] as const);
    return chance.pick([
      () => this.arithmetic(a(), a()),
      () => this.arithmetic(a(), a()),
      () => prefix(chance.pick(['-', '-', '+']), a()),
      () => this.call(chance.pick(one), ['float'], depth),
      () => this.call(chance.pick(two), ['float', 'float'], depth),
      () => this.call(chance.pick(three), ['float', 'float', 'float'], depth),
      () => this.call('atan', ['float', 'float'], depth),
      () => this.call('float', [chance.pick(types)], depth),
      () => this.call('hash', chance.pick([['int'], ['int', 'int']] as const), depth),
      () => this.call('length', [chance.pick(realTypes)], depth),
      () => {
        const type = chance.pick(realTypes);
        return this.call(chance.pick(['distance', 'dot']), [type, type], depth);
      },
      () => this.swizzle(vector(), 1, depth),
    ])();
  }

  private arithmetic(a: Text, b: Text): Text {
    const sign = this.chance.pick(['+', '-', '*', '*', '/']);
    return infix(sign === '+' || sign === '-' ? binding.sum : binding.product, sign, a, b);
  }

  private vector(type: 'vec2' | 'vec3', depth: number): Text {
    const { chance } = this;
    const a = (of: Type = type) => this.of(of, depth);
    const splat = (): Type => (chance.flip(0.4) ? 'float' : type);
    return chance.pick([
      () => this.arithmetic(a(), a(splat())),
      () => this.arithmetic(a('float'), a()),
      () => prefix('-', a()),
      () => this.call(type, chance.pick(constructions[type]), depth),
      () => this.call(chance.pick([...one, 'normalize']), [type], depth),
      () => {
        const name = chance.pick(['min', 'max', 'mod']);
        return this.call(name, [type, splat()], depth);
      },
      () => this.call('step', [splat(), type], depth),
      () => this.call('mix', [type, type, splat()], depth),
      () => {
        const edges = splat();
        return chance.flip()
          ? this.call('clamp', [type, edges, edges], depth)
          : this.call('smoothstep', [edges, edges, type], depth);
      },
      () => this.swizzle(chance.pick(['vec2', 'vec3'] as const), sizes[type], depth),
      () =>
        type === 'vec3' && this.gradients.length > 0
          ? this.call(chance.pick(this.gradients), ['float'], depth)
          : this.call(type, [type], depth),
    ])();
  }

  private int(depth: number): Text {
    const { chance } = this;
    const a = () => this.of('int', depth);
    return chance.pick([
      () => infix(binding.sum, chance.pick(['+', '-']), a(), a()),
      () => infix(binding.product, chance.pick(['*', '/', '%']), a(), a()),
      () => prefix('-', a()),
      () => this.call('int', [chance.pick(types)], depth),
      () => this.call(chance.pick(['abs', 'sign']), ['int'], depth),
      () => this.call(chance.pick(['min', 'max']), ['int', 'int'], depth),
      () => this.call('clamp', ['int', 'int', 'int'], depth),
    ])();
  }

  private bool(depth: number): Text {
    const { chance } = this;
    const numbers = chance.pick(['float', 'int'] as const);
    const same = chance.pick(types);
    return chance.pick([
      () =>
        infix(
          binding.compare,
          chance.pick(['<', '<=', '>', '>=']),
          this.of(numbers, depth),
          this.of(numbers, depth),
        ),
      () => infix(binding.equal, chance.pick(['==', '!=']), this.of(same, depth), this.of(same, depth)),
      () => infix(binding.and, '&&', this.of('bool', depth), this.of('bool', depth)),
      () => infix(binding.or, '||', this.of('bool', depth), this.of('bool', depth)),
      () => infix(binding.xor, '^^', this.of('bool', depth), this.of('bool', depth)),
      () => prefix('!', this.of('bool', depth)),
      () => this.call('bool', [chance.pick(types)], depth),
    ])();
  }

  private choice(type: Type, depth: number): Text {
    const condition = this.of('bool', Math.min(depth, 1));
    const [yes, no] = [this.of(type, depth), this.of(type, depth)];
    return {
      text: `${at(binding.or, condition)} ? ${this.loose(yes)} : ${this.loose(no)}`,
      binds: binding.choice,
    };
  }

  private call(name: string, takes: readonly Type[], depth: number): Text {
    return atom(`${name}(${takes.map((type) => this.loose(this.of(type, depth))).join(', ')})`);
  }

  private swizzle(of: 'vec2' | 'vec3', length: number, depth: number): Text {
    const set = this.chance.pick(['xyz', 'rgb', 'stp']).slice(0, sizes[of]);
    const field = this.chance.list(length, () => this.chance.pick([...set])).join('');
    return atom(`${at(binding.atom, this.of(of, depth))}.${field}`);
  }

  private distinctField(size: number): string {
    const letters = [...this.chance.pick(['xyz', 'rgb', 'stp']).slice(0, size)];
    const field = this.chance.some(letters, this.chance.whole(1, size));
    return (this.chance.flip() ? field : field.reverse()).join('');
  }

  private loose({ text }: Text): string {
    return text;
  }

  private fresh(): string {
    return `${this.chance.pick(words)}_${++this.serial}`;
  }

  /** A new variable in the innermost frame; now and then it takes, and so hides, a name from further out. */
  private declare(type: Type, { writable = true, constant = false } = {}): string {
    const frame = this.frames.at(-1)!;
    const outer = this.frames.slice(1, -1).flat();
    const hidden = this.chance.flip(0.1) && outer.length > 0 ? this.chance.pick(outer).text : undefined;
    const text =
      hidden !== undefined && this.frames.length > 3 && !frame.some((one) => one.text === hidden)
        ? hidden
        : this.fresh();
    frame.push({ text, type, writable, constant });
    return text;
  }

  /** What is in sight: an inner name hides the outer one. */
  private names(): Name[] {
    const seen = new Map<string, Name>();
    for (const name of this.frames.flat()) seen.set(name.text, name);
    return [...seen.values()];
  }

  private isHidden(name: string): boolean {
    return this.names().some(({ text }) => text === name);
  }
}

const given: readonly (readonly [string, Type])[] = [
  ['along', 'float'],
  ['place', 'vec2'],
  ['pixel', 'int'],
  ['count', 'int'],
  ['time', 'float'],
  ['turn', 'float'],
  ['seed', 'int'],
];

const words = ['reed', 'oar', 'lantern', 'quay', 'eddy', 'ferry', 'moth', 'wick'];
const one = [
  ...['abs', 'sign', 'floor', 'ceil', 'fract', 'sqrt', 'inversesqrt', 'sin', 'cos', 'atan', 'exp2', 'log2'],
  ...['radians', 'degrees', 'normalize'],
];
const two = ['mod', 'min', 'max', 'step', 'pow'];
const three = ['clamp', 'mix', 'smoothstep'];
const constructions: Record<'vec2' | 'vec3', readonly (readonly Type[])[]> = {
  vec2: [
    ['float'],
    ['float', 'float'],
    ['vec3'],
    ['int', 'float'],
    ['float', 'vec2'],
    ['bool', 'int'],
    ['int'],
  ],
  vec3: [
    ...([['float'], ['float', 'float', 'float'], ['vec2', 'float'], ['float', 'vec2'], ['vec3']] as const),
    ...([['vec2', 'vec2'], ['int', 'bool', 'float'], ['vec2', 'vec3'], ['bool']] as const),
  ],
};

const atom = (text: string): Text => ({ text, binds: binding.atom });
const at = (binds: number, inner: Text) => (inner.binds >= binds ? inner.text : `(${inner.text})`);
/** Left associative: what stands on the right must bind tighter. */
const infix = (binds: number, sign: string, a: Text, b: Text): Text => ({
  text: `${at(binds, a)} ${sign} ${at(binds + 1, b)}`,
  binds,
});
/** Two minus signs in a row would read as one `--`. */
const prefix = (sign: string, a: Text): Text => {
  const inner = at(binding.unary, a);
  return { text: /^[+-]/.test(inner) ? `${sign}(${inner})` : `${sign}${inner}`, binds: binding.unary };
};
