/** Random expressions of a wanted type, from the names in sight: the half of the generator that statements build on. */
import type { ParameterDescription } from '../../engine/piece/schema.ts';
import type { Chance } from './generate/chance.ts';
import {
  at,
  atom,
  binding,
  constructions,
  infix,
  type Name,
  one,
  prefix,
  realTypes,
  type Signature,
  sizes,
  type Text,
  type Type,
  three,
  two,
  types,
  words,
} from './patterns-generate-words.ts';

export interface GeneratorOptions {
  /** Expressions nest this deep. */
  readonly depth?: number;
  /**
   * Leave out what floats and our formats cannot be expected to agree on: variables without a value, and
   * whether a float is exactly 0.
   */
  readonly tame?: boolean;
}

export class ExpressionWriter {
  protected readonly frames: Name[][] = [[]];
  protected readonly functions: Signature[] = [
    { name: 'noise', takes: ['float'], gives: 'float' },
    { name: 'noise', takes: ['vec2'], gives: 'float' },
    { name: 'hue', takes: ['float'], gives: 'vec3' },
  ];
  protected readonly parameters: ParameterDescription[] = [];
  protected readonly gradients: string[] = [];
  protected readonly depth: number;
  protected turns = 1;
  protected serial = 0;

  constructor(
    protected readonly chance: Chance,
    protected readonly options: GeneratorOptions,
  ) {
    this.depth = options.depth ?? 3;
  }

  protected of(type: Type, depth: number): Text {
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

  protected constantOf(type: Type, depth: number): Text {
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

  protected literal(type: Type): Text {
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

  protected float(depth: number): Text {
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

  protected arithmetic(a: Text, b: Text): Text {
    const sign = this.chance.pick(['+', '-', '*', '*', '/']);
    return infix(sign === '+' || sign === '-' ? binding.sum : binding.product, sign, a, b);
  }

  protected vector(type: 'vec2' | 'vec3', depth: number): Text {
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

  protected int(depth: number): Text {
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

  protected bool(depth: number): Text {
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
      () => this.call('bool', [chance.pick(this.options.tame ? (['int', 'bool'] as const) : types)], depth),
    ])();
  }

  protected choice(type: Type, depth: number): Text {
    const condition = this.of('bool', Math.min(depth, 1));
    const [yes, no] = [this.of(type, depth), this.of(type, depth)];
    return {
      text: `${at(binding.or, condition)} ? ${this.loose(yes)} : ${this.loose(no)}`,
      binds: binding.choice,
    };
  }

  protected call(name: string, takes: readonly Type[], depth: number): Text {
    return atom(`${name}(${takes.map((type) => this.loose(this.of(type, depth))).join(', ')})`);
  }

  protected swizzle(of: 'vec2' | 'vec3', length: number, depth: number): Text {
    const set = this.chance.pick(['xyz', 'rgb', 'stp']).slice(0, sizes[of]);
    const field = this.chance.list(length, () => this.chance.pick([...set])).join('');
    return atom(`${at(binding.atom, this.of(of, depth))}.${field}`);
  }

  protected distinctField(size: number): string {
    const letters = [...this.chance.pick(['xyz', 'rgb', 'stp']).slice(0, size)];
    const field = this.chance.some(letters, this.chance.whole(1, size));
    return (this.chance.flip() ? field : field.reverse()).join('');
  }

  protected loose({ text }: Text): string {
    return text;
  }

  protected fresh(): string {
    return `${this.chance.pick(words)}_${++this.serial}`;
  }

  /** A new variable in the innermost frame; now and then it takes, and so hides, a name from further out. */
  protected declare(type: Type, { writable = true, constant = false } = {}): string {
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
  protected names(): Name[] {
    const seen = new Map<string, Name>();
    for (const name of this.frames.flat()) seen.set(name.text, name);
    return [...seen.values()];
  }

  protected isHidden(name: string): boolean {
    return this.names().some(({ text }) => text === name);
  }
}
