/**
 * Arithmetic on real numbers: which format a result takes, and which integer operation makes it.
 *
 * The rule: lowp values stay in 16 bits (Q2.14) where the range allows, mediump values take Q16.16, or
 * UQ0.16 where they are proved to lie in [0, 1): the same step in half the bytes. Ranges and declared
 * precision alone decide, never the present value of a parameter.
 */
import type { Span } from '../../diagnostic.ts';
import { type Range, rangeOf } from '../../fixed/integers.ts';
import type { Graph } from '../graph.ts';
import type { Node } from '../ir.ts';
import { addRange, divRange, fits, mulRange, subRange, within } from '../range.ts';
import { type Form, type Format, finerOf, formats, mostParts, partsOf, type Real, rangeAt } from './value.ts';

const phaseRange: Range = rangeOf.u16;

export class Arithmetic {
  /** Where a mediump result may leave its format; harmless if only its fraction is used. */
  readonly mayWrap = new Map<Node, Span>();
  /** The source that is being lowered, for those who report. */
  span: Span = { start: 0, end: 0, line: 1, column: 1 };

  constructor(readonly graph: Graph) {}

  real(format: Format, node: Node, precision: Real['precision'], form?: Form): Real {
    return form === undefined
      ? { kind: 'real', precision, format, node }
      : { kind: 'real', precision, format, node, form };
  }

  literal(exact: number): Real {
    const format =
      Math.round(exact * 16384) >= -32768 && Math.round(exact * 16384) <= 32767 ? 'lowp' : 'mediump';
    return { kind: 'real', precision: 'literal', format, node: this.quantised(exact, format), exact };
  }

  private quantised(exact: number, format: Format): Node {
    const { type, fraction } = formats[format];
    const { min, max } = rangeOf[type];
    return this.graph.constant(type, Math.min(max, Math.max(min, Math.round(exact * 2 ** fraction))));
  }

  /** The node of a value in another format; the caller has seen that it fits. */
  nodeIn(value: Real, format: Format): Node {
    if (value.exact !== undefined) return this.quantised(value.exact, format);
    const { type, fraction } = formats[format];
    const shift = fraction - formats[value.format].fraction;
    if (shift >= 0) return this.graph.shl(type, this.graph.cast(type, value.node), shift);
    return this.graph.shr(type, value.node, -shift);
  }

  /** The first format of the rule that holds both values as they are. */
  common(a: Real, b: Real): Format {
    const precision = finerOf(a.precision, b.precision);
    if (a.format === b.format && a.exact === undefined && b.exact === undefined) return a.format;
    const partner = a.exact !== undefined ? b : b.exact !== undefined ? a : undefined;
    const literal = partner === a ? b : a;
    if (partner?.format === 'phase' && within(rangeAt(literal, 16), phaseRange)) return 'phase';
    if (precision !== 'mediump' && fits(rangeAt(a, 14), 'i16') && fits(rangeAt(b, 14), 'i16')) return 'lowp';
    return 'mediump';
  }

  add(a: Real, b: Real): Real {
    return this.sum(a, b, 1);
  }

  sub(a: Real, b: Real): Real {
    return this.sum(a, b, -1);
  }

  private sum(a: Real, b: Real, sign: 1 | -1): Real {
    if (a.exact !== undefined && b.exact !== undefined) return this.literal(a.exact + sign * b.exact);
    const precision = finerOf(a.precision, b.precision);
    const combine = sign === 1 ? addRange : subRange;
    const op = sign === 1 ? 'add' : 'sub';
    const parts = partsOf(a) + partsOf(b);
    const form: Form | undefined = parts > mostParts ? undefined : { kind: 'sum', a, b, sign, parts };
    const total16 = combine(rangeAt(a, 16), rangeAt(b, 16));
    const bothPhase = a.format === 'phase' && b.format === 'phase';
    if (within(total16, phaseRange) && (precision === 'mediump' || bothPhase)) {
      // Modulo 2^16 the sum of the low halves is the low half of the sum.
      const node = this.graph[op]('u16', this.lowHalf(a), this.lowHalf(b));
      return this.real('phase', this.graph.bounded(node, total16), precision, form);
    }
    if (precision !== 'mediump' && fits(rangeAt(a, 14), 'i16') && fits(rangeAt(b, 14), 'i16')) {
      const [left, right] = [this.nodeIn(a, 'lowp'), this.nodeIn(b, 'lowp')];
      if (fits(combine(left, right), 'i16'))
        return this.real('lowp', this.graph[op]('i16', left, right), precision, form);
    }
    const [left, right] = [this.nodeIn(a, 'mediump'), this.nodeIn(b, 'mediump')];
    const node = this.graph[op]('i32', left, right);
    if (!fits(combine(left, right), 'i32')) this.mayWrap.set(node, this.span);
    return this.real('mediump', node, precision, form);
  }

  negative(a: Real): Real {
    return a.exact !== undefined ? this.literal(-a.exact) : this.sub(this.literal(0), a);
  }

  mul(a: Real, b: Real): Real {
    if (a.exact !== undefined) return this.scale(b, a.exact);
    if (b.exact !== undefined) return this.scale(a, b.exact);
    const precision = finerOf(a.precision, b.precision);
    const form: Form = { kind: 'product', a, b };
    const ramp = this.ramp(a, b, precision, form) ?? this.ramp(b, a, precision, form);
    if (ramp !== undefined) return ramp;
    const fraction = formats[a.format].fraction + formats[b.format].fraction;
    return this.productOf(
      a.node,
      b.node,
      fraction,
      precision,
      form,
      a.format === 'phase' && b.format === 'phase',
    );
  }

  /** A product with `fraction` fraction bits, brought to the format that its range allows. */
  private productOf(
    a: Node,
    b: Node,
    fraction: number,
    precision: Real['precision'],
    form: Form,
    bothPhase: boolean,
  ): Real {
    const inFormat = (format: Format) => {
      const { type, fraction: wanted } = formats[format];
      return this.graph.mul(type, a, b, fraction - wanted);
    };
    const product16 = mulRange(a, b, fraction - 16);
    if (within(product16, phaseRange) && (precision === 'mediump' || bothPhase)) {
      return this.real('phase', this.graph.bounded(inFormat('phase'), product16), precision, form);
    }
    if (precision !== 'mediump' && fits(mulRange(a, b, fraction - 14), 'i16')) {
      return this.real('lowp', inFormat('lowp'), precision, form);
    }
    const node = inFormat('mediump');
    if (!fits(product16, 'i32')) this.mayWrap.set(node, this.span);
    return this.real('mediump', node, precision, form);
  }

  /** Times a number of the source. Two in a row become one. */
  scale(value: Real, factor: number): Real {
    if (value.exact !== undefined) return this.literal(value.exact * factor);
    if (factor === 1) return value;
    const { form } = value;
    if (form?.kind === 'scaled' && Math.abs(form.factor * factor) < 32768)
      return this.scaled(form.base, form.factor * factor, value.precision);
    return this.scaled(value, factor, value.precision);
  }

  private scaled(base: Real, factor: number, precision: Real['precision']): Real {
    if (Math.abs(factor - 1) < 2 ** -20) return { ...base, precision };
    const form: Form = { kind: 'scaled', base, factor };
    const { mantissa, fraction } = this.factorFor(base, factor);
    const constant = this.real('mediump', this.graph.constant('i32', mantissa), precision);
    if (fraction === 16) {
      const ramp = this.ramp(base, constant, precision, form);
      if (ramp !== undefined) return ramp;
    }
    const total = formats[base.format].fraction + fraction;
    return this.productOf(base.node, constant.node, total, precision, form, base.format === 'phase');
  }

  /** A factor keeps 16 fraction bits, or 15 significant ones where a 16 bit value is to be multiplied. */
  private factorFor(base: Real, factor: number): Factor {
    if (base.format === 'mediump') return fineFactor(base.node, factor);
    const full = clampTo32(Math.round(factor * 65536));
    const significant = full / (full & -full || 1);
    if (Math.abs(significant) <= 32767) return { mantissa: full, fraction: 16 };
    let fraction = 16;
    // Two bits at least, so that the product still has the 16 fraction bits of a mediump.
    while (fraction > 2 && Math.abs(Math.round(factor * 2 ** fraction)) > 32767) fraction--;
    return { mantissa: Math.round(factor * 2 ** fraction), fraction };
  }

  /**
   * `along` times something that is the same for all pixels: index times one step, truncated once, so
   * that a running sum gives the same bits. Only where the result has 16 bits.
   */
  private ramp(along: Real, factor: Real, precision: Real['precision'], form: Form): Real | undefined {
    if (along.form?.kind !== 'along' || factor.node.rate === 'pixel') return undefined;
    const { graph } = this;
    const fraction = formats[factor.format].fraction;
    const bounds16 = mulRange(along.node, factor.node, fraction);
    if (within(bounds16, phaseRange)) {
      const node = this.rampNode(factor);
      return this.real('phase', graph.bounded(node, { min: 0, max: bounds16.max }), precision, form);
    }
    const bounds14 = mulRange(along.node, factor.node, fraction + 2);
    if (precision === 'mediump' || !fits({ min: bounds14.min - 1, max: bounds14.max + 1 }, 'i16'))
      return undefined;
    const step = graph.mul('i32', graph.zone('inverse', rangeOf.u32), factor.node, fraction + 2);
    const product = graph.mul('i32', graph.cast('i32', this.index()), step, 0);
    const bounds = { min: bounds14.min - 1, max: bounds14.max + 1 };
    return this.real('lowp', graph.bounded(graph.shr('i16', product, 16), bounds), precision, form);
  }

  index(): Node {
    return this.graph.input('index', 'u16', { min: 0, max: 1999 });
  }

  /** The fraction of index * step in UQ0.16, for a step of `factor` over the whole zone. */
  private rampNode(factor: Real): Node {
    const { graph } = this;
    const { fraction } = formats[factor.format];
    const step = graph.mul('u32', graph.zone('inverse', rangeOf.u32), factor.node, fraction);
    return graph.shr('u16', graph.mul('u32', graph.cast('u32', this.index()), step, 0), 16);
  }

  div(a: Real, b: Real): Real {
    if (b.exact !== undefined) return b.exact === 0 ? this.scale(a, 0) : this.scale(a, 1 / b.exact);
    const precision = finerOf(a.precision, b.precision);
    const quotient = (format: Format) => {
      const shift = formats[format].fraction + formats[b.format].fraction - formats[a.format].fraction;
      return { shift, range: divRange(a.node, b.node, shift) };
    };
    const pick = (format: Format) =>
      this.graph.div(formats[format].type, a.node, b.node, quotient(format).shift);
    if (precision === 'mediump' && within(quotient('phase').range, phaseRange)) {
      return this.real('phase', pick('phase'), precision);
    }
    if (precision !== 'mediump' && fits(quotient('lowp').range, 'i16'))
      return this.real('lowp', pick('lowp'), precision);
    const node = pick('mediump');
    if (!fits(quotient('mediump').range, 'i32')) this.mayWrap.set(node, this.span);
    return this.real('mediump', node, precision);
  }

  /** The fraction of value * factor in UQ0.16: everything modulo 1, so nothing can overflow. */
  fractionOf(value: Real, factor = 1): Node {
    const { graph } = this;
    if (value.exact !== undefined) return graph.constant('u16', Math.round(value.exact * factor * 65536));
    const { form } = value;
    if (form?.kind === 'sum') {
      const [a, b] = [this.fractionOf(form.a, factor), this.fractionOf(form.b, factor)];
      return form.sign === 1 ? graph.add('u16', a, b) : graph.sub('u16', a, b);
    }
    if (form?.kind === 'scaled') return this.scaledFraction(form.base, form.factor * factor);
    if (factor !== 1) return this.scaledFraction(value, factor);
    if (form?.kind === 'product') {
      const { a, b } = form;
      if (a.form?.kind === 'along' && b.node.rate !== 'pixel') return this.rampNode(b);
      if (b.form?.kind === 'along' && a.node.rate !== 'pixel') return this.rampNode(a);
      const shift = formats[a.format].fraction + formats[b.format].fraction - 16;
      return graph.mul('u16', a.node, b.node, shift);
    }
    return this.lowHalf(value);
  }

  private scaledFraction(base: Real, factor: number): Node {
    const { graph } = this;
    const rounded = clampTo32(Math.round(factor * 65536));
    // A whole number of turns may be applied after the fraction was taken.
    if (rounded % 65536 === 0 && rounded !== 0) {
      return graph.mul('u16', this.fractionOf(base), graph.constant('i32', rounded / 65536), 0);
    }
    const constant = graph.constant('i32', rounded);
    if (base.form?.kind === 'along') return this.rampNode(this.real('mediump', constant, 'mediump'));
    if (base.format !== 'mediump')
      return graph.mul('u16', base.node, constant, formats[base.format].fraction);
    const { mantissa, fraction } = fineFactor(base.node, factor);
    return graph.mul('u16', base.node, graph.constant('i32', mantissa), fraction);
  }

  /** The low 16 bits at 16 fraction bits. */
  private lowHalf(value: Real): Node {
    if (value.exact !== undefined) return this.graph.constant('u16', Math.round(value.exact * 65536));
    if (value.format === 'lowp') return this.graph.shl('u16', value.node, 2);
    return this.graph.cast('u16', value.node);
  }
}

interface Factor {
  readonly mantissa: number;
  readonly fraction: number;
}

/**
 * A number of the source that a 32 bit value is multiplied by. 16 fraction bits alone would leave little of
 * a small one: time / 3600.0 would be off by a hundredth. It takes more of them until 12 bits are
 * significant, as long as the product still passes through 32 bits on the way.
 */
function fineFactor(node: Node, factor: number): Factor {
  const mantissaAt = (fraction: number) => clampTo32(Math.round(factor * 2 ** fraction));
  let fraction = 16;
  while (
    fraction < 28 &&
    Math.abs(factor) * 2 ** fraction < 4096 &&
    !Number.isInteger(factor * 2 ** fraction)
  ) {
    const finer = mantissaAt(fraction + 4);
    if (!fits(mulRange(node, { min: finer, max: finer }, 16), 'i32')) break;
    fraction += 4;
  }
  return { mantissa: mantissaAt(fraction), fraction };
}

const clampTo32 = (value: number) => Math.min(0x7fffffff, Math.max(-0x80000000, value));
