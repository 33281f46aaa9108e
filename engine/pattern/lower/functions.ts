/** The built-in functions on scalars, by their definitions in GLSL ES 3.00 chapter 8 and our language notes. */
import { rangeOf } from '../../fixed/integers.ts';
import type { Node } from '../ir.ts';
import { fits, hull, within } from '../range.ts';
import type { Arithmetic } from './arithmetic.ts';
import { type Format, finerOf, formats, type Real, rangeAt, type Truth } from './value.ts';

const turn = 1 / (2 * Math.PI);

export class Functions {
  constructor(private readonly arithmetic: Arithmetic) {}

  private get graph() {
    return this.arithmetic.graph;
  }

  private unit(format: Format, node: Node, precision: Real['precision']): Real {
    return this.arithmetic.real(format, node, precision);
  }

  /** Both values in one format, and an operation on them. */
  private together<T>(a: Real, b: Real, run: (left: Node, right: Node, format: Format) => T): T {
    const format = this.arithmetic.common(a, b);
    return run(this.arithmetic.nodeIn(a, format), this.arithmetic.nodeIn(b, format), format);
  }

  less(a: Real, b: Real): Truth {
    return { kind: 'truth', node: this.together(a, b, (left, right) => this.graph.less(left, right)) };
  }

  lessEqual(a: Real, b: Real): Truth {
    return { kind: 'truth', node: this.together(a, b, (left, right) => this.graph.lessEqual(left, right)) };
  }

  equal(a: Real, b: Real): Truth {
    return { kind: 'truth', node: this.together(a, b, (left, right) => this.graph.equal(left, right)) };
  }

  select(condition: Node, a: Real, b: Real): Real {
    if (condition.op === 'const') return condition.value === 1 ? a : b;
    if (a.node === b.node && a.format === b.format) return a;
    return this.together(a, b, (left, right, format) =>
      this.unit(
        format,
        this.graph.select(formats[format].type, condition, left, right),
        finerOf(a.precision, b.precision),
      ),
    );
  }

  private extreme(op: 'min' | 'max', a: Real, b: Real): Real {
    if (a.exact !== undefined && b.exact !== undefined)
      return this.arithmetic.literal(Math[op](a.exact, b.exact));
    // Decided in advance: the value passes through in its own format, and remembers how it came about.
    const [lower, upper] = op === 'min' ? [a, b] : [b, a];
    if (rangeAt(a, 16).max <= rangeAt(b, 16).min) return lower;
    if (rangeAt(b, 16).max <= rangeAt(a, 16).min) return upper;
    return this.together(a, b, (left, right, format) =>
      this.unit(format, this.graph[op](formats[format].type, left, right), finerOf(a.precision, b.precision)),
    );
  }

  min(a: Real, b: Real): Real {
    return this.extreme('min', a, b);
  }

  max(a: Real, b: Real): Real {
    return this.extreme('max', a, b);
  }

  clamp(x: Real, low: Real, high: Real): Real {
    return this.narrowed(this.min(this.max(x, low), high));
  }

  abs(x: Real): Real {
    if (x.exact !== undefined) return this.arithmetic.literal(Math.abs(x.exact));
    if (x.node.min >= 0) return x;
    const size = this.max(x, this.arithmetic.negative(x));
    // The most negative number of all wraps to itself.
    if (x.node.min === rangeOf.i32.min) return size;
    return { ...size, node: this.graph.bounded(size.node, { min: 0, max: size.node.max }) };
  }

  sign(x: Real): Real {
    const literal = (value: number) =>
      this.unit('lowp', this.arithmetic.nodeIn(this.arithmetic.literal(value), 'lowp'), x.precision);
    const zero = this.graph.constant(x.node.type, 0);
    const positive = this.select(this.graph.less(zero, x.node), literal(1), literal(0));
    return this.select(this.graph.less(x.node, zero), literal(-1), positive);
  }

  /** A mediump value whose range allows it continues in the shorter format its precision permits. */
  narrowed(x: Real): Real {
    if (x.format !== 'mediump' || x.exact !== undefined) return x;
    if (x.precision === 'lowp' && fits(rangeAt(x, 14), 'i16'))
      return this.unit('lowp', this.arithmetic.nodeIn(x, 'lowp'), x.precision);
    if (within(x.node, { min: 0, max: 0xffff }))
      return this.unit('phase', this.graph.cast('u16', x.node), x.precision);
    return x;
  }

  wholeOf(x: Real): Node {
    const node = this.graph.shr('i32', x.node, formats[x.format].fraction);
    return fits(node, 'i16') ? this.graph.cast('i16', node) : node;
  }

  floor(x: Real): Real {
    if (x.exact !== undefined) return this.arithmetic.literal(Math.floor(x.exact));
    const whole = this.wholeOf(x);
    return { ...this.fromWhole(whole, x.precision), whole };
  }

  fromWhole(whole: Node, precision: Real['precision']): Real {
    const node = this.graph.shl('i32', this.graph.cast('i32', whole), 16);
    if (!fits({ min: whole.min * 65536, max: whole.max * 65536 }, 'i32')) {
      this.arithmetic.mayWrap.set(node, this.arithmetic.span);
    }
    return { ...this.narrowed(this.unit('mediump', node, precision)), whole };
  }

  ceil(x: Real): Real {
    const floored = this.floor(this.arithmetic.negative(x));
    const value = this.arithmetic.negative(floored);
    return floored.whole === undefined
      ? value
      : { ...value, whole: this.graph.sub('i32', this.graph.constant('i32', 0), floored.whole) };
  }

  fract(x: Real): Real {
    if (x.exact !== undefined) return this.arithmetic.literal(x.exact - Math.floor(x.exact));
    return this.unit('phase', this.arithmetic.fractionOf(x), x.precision);
  }

  mod(x: Real, y: Real): Real {
    if (y.exact === 1) return this.fract(x);
    if (x.exact !== undefined && y.exact !== undefined) {
      return this.arithmetic.literal(y.exact === 0 ? 0 : x.exact - y.exact * Math.floor(x.exact / y.exact));
    }
    const result = this.together(x, y, (left, right, format) =>
      this.unit(format, this.graph.mod(formats[format].type, left, right), finerOf(x.precision, y.precision)),
    );
    return this.narrowed(result);
  }

  /** a + (b - a) * t. Where t stays in 0..1 the result lies between a and b, whatever the parts of the sum do. */
  mix(a: Real, b: Real, t: Real): Real {
    const { arithmetic, graph } = this;
    const difference = arithmetic.sub(b, a);
    const product = arithmetic.mul(difference, t);
    const isProper =
      within(rangeAt(t, 16), { min: 0, max: 65536 }) && !arithmetic.mayWrap.has(difference.node);
    // Between two numbers of the source the sum's own range says it all.
    if (!isProper || (a.exact !== undefined && b.exact !== undefined)) return arithmetic.add(a, product);
    const precision = finerOf(finerOf(a.precision, b.precision), t.precision);
    const ends: [Real, Real] = [
      { ...a, precision },
      { ...b, precision },
    ];
    const bothPhase = a.format === 'phase' && b.format === 'phase';
    // A ramp falls short by a step: below 0 a phase would leap to 1.
    const isRamp = t.form?.kind === 'along' && product.format === 'lowp';
    const plain = bothPhase ? 'phase' : arithmetic.common(...ends);
    const format = plain === 'phase' && isRamp ? 'lowp' : plain;
    const { type } = formats[format];
    const [from, to] = [arithmetic.nodeIn(a, format), arithmetic.nodeIn(b, format)];
    const node = graph.add(type, from, arithmetic.nodeIn(product, format));
    // Bits that one part of the sum has lost and the other has not can carry it past an end by one lowp step.
    const isShort = format === 'lowp' || difference.format === 'lowp';
    const losesBits =
      isRamp || (format !== 'lowp' && product.format === 'lowp') || (isShort && !(isLowp(a) && isLowp(b)));
    const slack = !losesBits ? 0 : format === 'lowp' ? 1 : 4;
    const { min, max } = hull(from, to);
    return this.unit(format, graph.bounded(node, { min: min - slack, max: max + slack }), precision);
  }

  step(edge: Real, x: Real): Real {
    const condition = this.less(x, edge).node;
    const precision = finerOf(edge.precision, x.precision);
    const [zero, one] = [0, 16384].map((raw) =>
      this.unit('lowp', this.graph.constant('i16', raw), precision),
    );
    return this.select(condition, zero!, one!);
  }

  /**
   * t = (x - e0) / (e1 - e0) in 0..1, then the soft step of it. The distance is bounded by the width before it is multiplied, so a narrow edge cannot overflow.
   */
  smoothstep(e0: Real, e1: Real, x: Real): Real {
    const { arithmetic } = this;
    const width = arithmetic.sub(e1, e0);
    const hard = this.step(e1, x);
    if (width.exact !== undefined && width.exact <= 0) return hard;
    if (width.exact === undefined && width.node.max <= 0) return hard;
    const distance = this.max(arithmetic.sub(x, e0), arithmetic.literal(0));
    let t: Real;
    if (width.exact !== undefined) {
      t = arithmetic.scale(this.min(distance, width), 1 / width.exact);
    } else {
      // Four steps of 1/65536 at least: the reciprocal then stays inside the format.
      const least = this.max(width, arithmetic.literal(4 / 65536));
      const within = this.min(distance, least);
      const one = this.unit('mediump', this.graph.constant('i32', 65536), 'mediump');
      // A reciprocal can be shared by all pixels, but that of a wide edge would keep few bits.
      const isShared = least.node.rate !== 'pixel' && rangeAt(least, 0).max <= 64;
      t = isShared ? arithmetic.mul(within, arithmetic.div(one, least)) : arithmetic.div(within, least);
    }
    const precision = finerOf(finerOf(e0.precision, e1.precision), x.precision);
    const soft = this.unit(
      'lowp',
      this.graph.call('soft', [this.clampToOne({ ...t, precision }).node]),
      precision,
    );
    const isProper = width.exact !== undefined || width.node.min > 0;
    return isProper ? soft : this.select(this.less(e0, e1).node, soft, hard);
  }

  private clampToOne(x: Real): Real {
    const limited = this.min(this.max(x, this.arithmetic.literal(0)), this.arithmetic.literal(1));
    return this.unit('lowp', this.arithmetic.nodeIn(limited, 'lowp'), 'lowp');
  }

  sqrt(x: Real): Real {
    if (x.exact !== undefined) return this.arithmetic.literal(Math.sqrt(Math.max(0, x.exact)));
    const { graph } = this;
    if (x.format === 'mediump') {
      return this.narrowed(this.unit('mediump', graph.call('rootMedium', [x.node]), x.precision));
    }
    const { type, fraction } = formats[x.format];
    const radicand = graph.shl(
      'u32',
      graph.cast('u32', graph.max(type, x.node, graph.constant(type, 0))),
      fraction,
    );
    return this.unit(x.format, graph.cast(type, graph.call('root', [radicand])), x.precision);
  }

  inversesqrt(x: Real): Real {
    const { arithmetic, graph } = this;
    const largest = this.unit('mediump', graph.constant('i32', 0x7fffffff), x.precision);
    const one = this.unit('mediump', graph.constant('i32', 65536), 'mediump');
    const medium = this.unit('mediump', arithmetic.nodeIn(x, 'mediump'), 'mediump');
    const inverse = arithmetic.div(
      one,
      this.unit('mediump', graph.call('rootMedium', [medium.node]), 'mediump'),
    );
    const isPositive = graph.less(graph.constant('i32', 0), medium.node);
    return this.select(isPositive, { ...inverse, precision: x.precision }, largest);
  }

  sin(x: Real): Real {
    return this.wave(this.arithmetic.fractionOf(x, turn), x.precision);
  }

  cos(x: Real): Real {
    const { graph } = this;
    return this.wave(
      graph.add('u16', this.arithmetic.fractionOf(x, turn), graph.constant('u16', 16384)),
      x.precision,
    );
  }

  private wave(phase: Node, precision: Real['precision']): Real {
    return this.unit('lowp', this.graph.call('sine', [phase]), precision === 'literal' ? 'lowp' : precision);
  }

  atan(y: Real, x: Real): Real {
    const precision = finerOf(y.precision, x.precision);
    const turns = this.together(y, x, (a, b) => this.graph.call('angle', [a, b]));
    const base = this.unit(
      'mediump',
      this.graph.cast('i32', turns),
      precision === 'literal' ? 'mediump' : precision,
    );
    return this.arithmetic.scale(base, 2 * Math.PI);
  }

  exp2(x: Real): Real {
    return this.narrowed(
      this.unit('mediump', this.graph.call('exp2', [this.arithmetic.nodeIn(x, 'mediump')]), x.precision),
    );
  }

  log2(x: Real): Real {
    return this.narrowed(
      this.unit('mediump', this.graph.call('log2', [this.arithmetic.nodeIn(x, 'mediump')]), x.precision),
    );
  }

  /** A small whole power of what is never negative is a product; the rest goes by logarithm. */
  pow(x: Real, y: Real): Real {
    const { arithmetic, graph } = this;
    if (x.node.min >= 0 && y.exact !== undefined && [1, 2, 3, 4].includes(y.exact)) {
      const square = y.exact > 1 ? arithmetic.mul(x, x) : x;
      if (y.exact === 4) return arithmetic.mul(square, square);
      return y.exact === 3 ? arithmetic.mul(square, x) : square;
    }
    const precision = finerOf(x.precision, y.precision);
    const logarithm = this.unit('mediump', graph.call('log2', [arithmetic.nodeIn(x, 'mediump')]), 'mediump');
    const exponent = arithmetic.mul({ ...y, precision: 'mediump' }, logarithm);
    const bounds = { min: -17 * 65536, max: 16 * 65536 };
    const limited = graph.max(
      'i32',
      graph.min('i32', arithmetic.nodeIn(exponent, 'mediump'), graph.constant('i32', bounds.max)),
      graph.constant('i32', bounds.min),
    );
    const power = this.unit('mediump', graph.call('exp2', [limited]), precision);
    const bounded = this.boundedPower(power, x, y);
    const zero = this.unit('lowp', graph.constant('i16', 0), precision);
    const isPositive = graph.less(graph.constant(x.node.type, 0), x.node);
    return this.narrowed(this.select(isPositive, bounded, zero));
  }

  /** What lies in 0..1 stays there under a positive exponent. */
  private boundedPower(power: Real, x: Real, y: Real): Real {
    const isUnit = within(rangeAt(x, 16), { min: -0x80000000, max: 65536 }) && y.node.min >= 0;
    if (!isUnit) return power;
    const one = this.graph.constant('i32', 65536);
    return { ...power, node: this.graph.min('i32', power.node, one) };
  }

  length(components: readonly Real[]): Real {
    const [first, ...rest] = components;
    if (rest.length === 0) return this.abs(first!);
    const precision = components.map((one) => one.precision).reduce(finerOf);
    const fitsLowp = precision !== 'mediump' && components.every((one) => fits(rangeAt(one, 14), 'i16'));
    const format: Format = fitsLowp ? 'lowp' : 'mediump';
    const nodes = components.map((one) => this.arithmetic.nodeIn(one, format));
    const node = this.graph.call(nodes.length === 2 ? 'length2' : 'length3', nodes);
    if (format === 'mediump') return this.narrowed(this.unit('mediump', node, precision));
    if (fits(node, 'i16')) return this.unit('lowp', this.graph.cast('i16', node), precision);
    return this.unit('mediump', this.graph.shl('i32', node, 2), precision);
  }

  dot(a: readonly Real[], b: readonly Real[]): Real {
    return a
      .map((one, i) => this.arithmetic.mul(one, b[i]!))
      .reduce((sum, term) => this.arithmetic.add(sum, term));
  }

  normalize(components: readonly Real[]): Real[] {
    if (components.length === 1) return [this.sign(components[0]!)];
    const length = this.length(components);
    return components.map((one) => {
      const quotient = this.arithmetic.div(one, length);
      // A component is never longer than its vector; the length is rounded down, hence the clamp.
      return this.clamp(quotient, this.arithmetic.literal(-1), this.arithmetic.literal(1));
    });
  }

  hash(a: Node, b: Node | undefined): Real {
    const words = (b === undefined ? [a] : [a, b]).map((node) => this.graph.cast('u16', node));
    return this.unit('phase', this.graph.call(b === undefined ? 'hash' : 'hash2', words), 'lowp');
  }
}

/** Whether 14 fraction bits hold the value exactly. */
const isLowp = ({ exact, format }: Real) =>
  exact === undefined ? format === 'lowp' : Number.isInteger(exact * 16384);
