/**
 * Random patterns over the whole language: all types and precisions, functions and overloads, loops,
 * conditions, early returns, built-ins, swizzles, shadowed names. Every one is meant to compile; the rare
 * one that a bound refuses (too much work) is drawn again.
 */
import { compilePattern } from '../../engine/pattern/compile.ts';
import { Chance } from './generate/chance.ts';
import { type PatternSource, randomStops } from './patterns.ts';

import { ExpressionWriter, type GeneratorOptions } from './patterns-generate-expressions.ts';
import { given, type Name, sizes, type Type, types } from './patterns-generate-words.ts';

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

class PatternWriter extends ExpressionWriter {
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
}
