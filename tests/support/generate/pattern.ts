/** Random patterns of a maker's own: well-typed sources over the whole language, however odd they look. */
import { compilePattern } from '../../../engine/pattern/compile.ts';
import type { ParameterDescription, PatternDefinition } from '../../../engine/piece/schema.ts';
import type { Chance } from './chance.ts';

const parameters: readonly ParameterDescription[] = [
  { kind: 'colour', name: 'tint', label: 'Tint', default: '#40c0ff' },
  { kind: 'number', name: 'amount', label: 'Amount', min: -2, max: 6, default: 1 },
  { kind: 'number', name: 'part', label: 'Part', min: 0, max: 1, default: 0.5 },
  { kind: 'whole', name: 'steps', label: 'Steps', min: -3, max: 12, default: 4 },
  { kind: 'yes-no', name: 'flipped', label: 'Flipped', default: false },
  {
    kind: 'gradient',
    name: 'reed',
    label: 'Reed',
    default: [
      { at: 0, colour: '#0b1d2a' },
      { at: 1, colour: '#f2d38b' },
    ],
  },
];

/** A pattern that compiles; what the language refuses (too large, a constant out of range) is drawn again. */
export function generatePattern(chance: Chance, name: string): PatternDefinition {
  for (let attempt = 0; attempt < 50; attempt++) {
    const source = new SourceWriter(chance).source();
    const { pattern } = compilePattern(source, parameters);
    if (pattern !== undefined) return { name, source, parameters: [...parameters] };
  }
  throw new Error('fifty patterns in a row were refused');
}

type Kind = 'float' | 'vec2' | 'vec3' | 'int' | 'bool';

class SourceWriter {
  private readonly scope: Record<Kind, string[]> = {
    float: ['along', 'time', 'turn', 'place.x', 'place.y', 'amount', 'part', 'tint.g'],
    vec2: ['place', 'place.yx'],
    vec3: ['tint', 'tint.zxy'],
    int: ['pixel', 'count', 'seed', 'steps'],
    bool: ['flipped'],
  };

  constructor(private readonly chance: Chance) {}

  source(): string {
    const body = this.chance.list(this.chance.whole(1, 4), (index) => this.statement(index)).join('');
    return `uniform lowp vec3 tint;
uniform mediump float amount;
uniform lowp float part;
uniform int steps;
uniform bool flipped;

mediump float bent(mediump float x, mediump float y) {
  return ${this.with(['x', 'y'], () => this.float(2))};
}

lowp vec3 light() {
${body}  return ${this.colour()};
}
`;
  }

  /** Declares a variable, then perhaps changes it by a condition or in a loop. */
  private statement(index: number): string {
    const kind = this.chance.pick(['float', 'float', 'vec2', 'vec3', 'int', 'bool'] as const);
    const name = `${kind}_${index}`;
    const precision = kind === 'int' || kind === 'bool' ? '' : this.chance.pick(['lowp ', 'mediump ', '']);
    const lines = [`${precision}${kind} ${name} = ${this.of(kind, 3)};`];
    this.scope[kind].push(name);
    const next = this.chance.pick(['nothing', 'condition', 'loop'] as const);
    if (next === 'condition') {
      lines.push(`if (${this.bool(2)}) { ${name} = ${this.of(kind, 2)}; }`);
      if (this.chance.flip()) lines.push(`else { ${name} = ${this.of(kind, 2)}; }`);
    }
    if (next === 'loop' && kind === 'float') {
      const step = this.with([`float(i_${index})`], () => this.float(2));
      lines.push(`for (int i_${index} = 0; i_${index} < ${this.chance.whole(1, 4)}; i_${index}++) {`);
      lines.push(`  ${name} ${this.chance.pick(['+=', '-=', '*=', '='])} fract(${step});`, '}');
    }
    return lines.map((line) => `  ${line}\n`).join('');
  }

  /** Most patterns end where something can be seen: inside of 0 to 1, and different from pixel to pixel. */
  private colour(): string {
    const { chance } = this;
    const visible = () => `fract(along * ${this.literal(1, 5)} + ${this.float(2)})`;
    return chance.pick([
      () => `vec3(${visible()}, ${visible()}, ${visible()})`,
      () => `gradient_reed(${visible()})`,
      () => `mix(tint, hue(${visible()}), ${visible()})`,
      () => `clamp(${this.vec3(3)}, 0.0, 1.0) * ${visible()} + vec3(${visible()}) * 0.5`,
      () => this.vec3(3),
    ])();
  }

  /** Writes with more floats in scope than there are outside. */
  private with(floats: readonly string[], write: () => string): string {
    const before = this.scope.float;
    this.scope.float = [...floats, ...before];
    const text = write();
    this.scope.float = before;
    return text;
  }

  private of(kind: Kind, depth: number): string {
    const writers: Record<Kind, () => string> = {
      float: () => this.float(depth),
      vec2: () => this.vec2(depth),
      vec3: () => this.vec3(depth),
      int: () => this.int(depth),
      bool: () => this.bool(depth),
    };
    return writers[kind]();
  }

  private literal(min: number, max: number): string {
    const text = String(this.chance.number(min, max, 2));
    return text.includes('.') ? text : `${text}.0`;
  }

  private float(depth: number): string {
    const { chance } = this;
    if (depth === 0) return chance.flip(0.3) ? this.literal(0, 4) : chance.pick(this.scope.float);
    const a = () => this.float(depth - 1);
    const one = [
      'abs',
      'sign',
      'floor',
      'ceil',
      'fract',
      'sqrt',
      'inversesqrt',
      'sin',
      'cos',
      'atan',
    ] as const;
    const more = ['exp2', 'log2', 'radians', 'degrees', 'noise'] as const;
    return chance.pick([
      () => `(${a()} ${chance.pick(['+', '-', '*', '/'])} ${a()})`,
      () => `(${a()} ${chance.pick(['+', '-', '*'])} ${a()})`,
      () => `${chance.pick([...one, ...more])}(${a()})`,
      () => `${chance.pick(['min', 'max', 'mod', 'step', 'pow', 'atan', 'bent'])}(${a()}, ${a()})`,
      () => `${chance.pick(['mix', 'clamp', 'smoothstep'])}(${a()}, ${a()}, ${a()})`,
      () => `${chance.pick(['length', 'noise'])}(${this.vec2(depth - 1)})`,
      () => `${chance.pick(['distance', 'dot'])}(${this.vec3(depth - 1)}, ${this.vec3(depth - 1)})`,
      () => `float(${this.int(depth - 1)})`,
      () => `hash(${this.int(depth - 1)})`,
      () => `hash(${this.int(depth - 1)}, ${this.int(depth - 1)})`,
      () => `(${this.bool(depth - 1)} ? ${a()} : ${a()})`,
      () => `gradient_reed(${a()}).${chance.pick(['r', 'g', 'b'])}`,
      () => `-${chance.pick(this.scope.float)}`,
    ])();
  }

  private vec2(depth: number): string {
    const { chance } = this;
    if (depth === 0) return chance.pick(this.scope.vec2);
    const a = () => this.vec2(depth - 1);
    return chance.pick([
      () => `vec2(${this.float(depth - 1)}, ${this.float(depth - 1)})`,
      () => `(${a()} ${chance.pick(['+', '-', '*'])} ${a()})`,
      () => `(${a()} * ${this.float(depth - 1)})`,
      () => `${chance.pick(['abs', 'fract', 'normalize', 'sin'])}(${a()})`,
      () => `${chance.pick(['min', 'max', 'mod'])}(${a()}, ${a()})`,
    ])();
  }

  private vec3(depth: number): string {
    const { chance } = this;
    if (depth === 0) return chance.pick(this.scope.vec3);
    const a = () => this.vec3(depth - 1);
    return chance.pick([
      () => `vec3(${this.float(depth - 1)}, ${this.float(depth - 1)}, ${this.float(depth - 1)})`,
      () => `(${a()} ${chance.pick(['+', '-', '*'])} ${a()})`,
      () => `mix(${a()}, ${a()}, ${this.float(depth - 1)})`,
      () => `${chance.pick(['abs', 'fract', 'normalize', 'sqrt'])}(${a()})`,
      () => `hue(${this.float(depth - 1)})`,
      () => `gradient_reed(${this.float(depth - 1)})`,
    ])();
  }

  private int(depth: number): string {
    const { chance } = this;
    if (depth === 0) return chance.flip(0.3) ? String(chance.whole(0, 9)) : chance.pick(this.scope.int);
    const a = () => this.int(depth - 1);
    return chance.pick([
      () => `(${a()} ${chance.pick(['+', '-', '*', '/', '%'])} ${a()})`,
      () => `${chance.pick(['abs', 'sign'])}(${a()})`,
      () => `${chance.pick(['min', 'max'])}(${a()}, ${a()})`,
      () => `int(${this.float(depth - 1)})`,
      () => `(${this.bool(depth - 1)} ? ${a()} : ${a()})`,
    ])();
  }

  private bool(depth: number): string {
    const { chance } = this;
    if (depth === 0) return chance.pick(this.scope.bool);
    const a = () => this.bool(depth - 1);
    return chance.pick([
      () => `(${this.float(depth - 1)} ${chance.pick(['<', '<=', '>', '>='])} ${this.float(depth - 1)})`,
      () => `(${this.int(depth - 1)} ${chance.pick(['<', '>=', '==', '!='])} ${this.int(depth - 1)})`,
      () => `(${a()} ${chance.pick(['&&', '||', '^^'])} ${a()})`,
      () => `!${a()}`,
    ])();
  }
}
