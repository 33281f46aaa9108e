/** Expressions to graph nodes: vectors component by component, each scalar by its kind. */
import type { Span } from '../../diagnostic.ts';
import type { givenTypes, TypedExpression, TypedFunction, Variable } from '../check/typed.ts';
import type { Graph } from '../graph.ts';
import type { Node } from '../ir.ts';
import type { Arithmetic } from './arithmetic.ts';
import { callBuiltin } from './builtins.ts';
import type { Functions } from './functions.ts';
import * as integers from './integers.ts';
import type { Real, Scalar, Truth, Value, Whole } from './value.ts';

export type Environment = Map<Variable, Value>;

/** What an expression may read beside its variables. */
export interface Surroundings {
  readonly graph: Graph;
  readonly arithmetic: Arithmetic;
  readonly functions: Functions;
  readonly given: (name: keyof typeof givenTypes) => Value;
  readonly parameter: (index: number) => Value;
  readonly invoke: (target: TypedFunction, args: readonly Value[]) => Value;
  /** Says which part of the source is being lowered, for those who report. */
  readonly at: (span: Span) => void;
  /** Counts the work of a source; throws where there is too much. */
  readonly spend: () => void;
}

type Of<K extends TypedExpression['kind']> = Extract<TypedExpression, { kind: K }>;

export class Expressions {
  constructor(private readonly around: Surroundings) {}

  lower(expression: TypedExpression, environment: Environment): Value {
    const { around } = this;
    around.spend();
    around.at(expression.span);
    const lower = (part: TypedExpression) => this.lower(part, environment);
    switch (expression.kind) {
      case 'number':
        return [
          expression.type === 'int'
            ? integers.wholeOf(around.graph, expression.value)
            : around.arithmetic.literal(expression.value),
        ];
      case 'bool':
        return [{ kind: 'truth', node: around.graph.constant('bool', Number(expression.value)) }];
      case 'variable':
        return environment.get(expression.variable)!;
      case 'given':
        return around.given(expression.name);
      case 'parameter':
        return around.parameter(expression.index);
      case 'gradient':
        return this.gradient(expression.index, lower(expression.position)[0] as Real);
      case 'builtin':
        return callBuiltin(around, expression.name, expression.args.map(lower));
      case 'invoke':
        return around.invoke(expression.target, expression.args.map(lower));
      case 'construct':
        return this.construct(expression, expression.args.map(lower));
      case 'unary':
        return lower(expression.operand).map((scalar) => this.unary(expression.sign, scalar));
      case 'binary':
        return this.binary(expression, environment);
      case 'choice':
        return this.choice(expression, lower);
      case 'swizzle': {
        const of = lower(expression.of);
        return expression.components.map((component) => of[component]!);
      }
    }
  }

  private gradient(index: number, position: Real): Value {
    const { arithmetic, functions, graph } = this.around;
    const clamped = functions.clamp(position, arithmetic.literal(0), arithmetic.literal(1));
    const at = arithmetic.nodeIn(clamped, 'lowp');
    return [0, 1, 2].map((channel) => arithmetic.real('lowp', graph.gradient(index, channel, at), 'lowp'));
  }

  private unary(sign: '+' | '-' | '!', scalar: Scalar): Scalar {
    const { arithmetic, graph } = this.around;
    if (scalar.kind === 'truth') return { kind: 'truth', node: graph.not(scalar.node) };
    if (sign === '+') return scalar;
    if (scalar.kind === 'real') return arithmetic.negative(scalar);
    return integers.combine(graph, '-', integers.wholeOf(graph, 0), scalar);
  }

  private choice(expression: Of<'choice'>, lower: (part: TypedExpression) => Value): Value {
    const condition = (lower(expression.condition)[0] as Truth).node;
    if (condition.op === 'const') return lower(condition.value === 1 ? expression.yes : expression.no);
    const [yes, no] = [lower(expression.yes), lower(expression.no)];
    return yes.map((scalar, i) => this.select(condition, scalar, no[i]!));
  }

  /** The value of one of two ways, in a format that holds both. */
  select(condition: Node, a: Scalar, b: Scalar): Scalar {
    const { functions, graph } = this.around;
    if (a.kind === 'real') return functions.select(condition, a, b as Real);
    if (a.kind === 'whole') return integers.select(graph, condition, a, b as Whole);
    return { kind: 'truth', node: graph.select('bool', condition, a.node, b.node) };
  }

  /** The left spine of a long sum is walked, not recursed into. */
  private binary(expression: Of<'binary'>, environment: Environment): Value {
    const spine: Of<'binary'>[] = [];
    let leftmost: TypedExpression = expression;
    while (leftmost.kind === 'binary') {
      spine.push(leftmost);
      leftmost = leftmost.left;
    }
    let left = this.lower(leftmost, environment);
    for (const one of spine.reverse()) {
      const right = this.lower(one.right, environment);
      this.around.at(one.span);
      left = this.combine(one, left, right);
    }
    return left;
  }

  private combine({ sign, type }: Of<'binary'>, left: Value, right: Value): Value {
    const { graph } = this.around;
    if (sign === '==' || sign === '!=') {
      const same = left.map((a, i) => this.equal(a, right[i]!)).reduce((all, one) => graph.and(all, one));
      return [{ kind: 'truth', node: sign === '==' ? same : graph.not(same) }];
    }
    const size = Math.max(left.length, right.length);
    const at = (value: Value, i: number) => value[value.length === 1 ? 0 : i]!;
    if (type === 'bool') return [{ kind: 'truth', node: this.test(sign, left[0]!, right[0]!) }];
    return Array.from({ length: size }, (_, i) => this.calculate(sign as '+', at(left, i), at(right, i)));
  }

  private calculate(sign: '+' | '-' | '*' | '/' | '%', a: Scalar, b: Scalar): Scalar {
    if (a.kind === 'whole') return integers.combine(this.around.graph, sign, a, b as Whole);
    const { arithmetic } = this.around;
    const [x, y] = [a as Real, b as Real];
    if (sign === '+') return arithmetic.add(x, y);
    if (sign === '-') return arithmetic.sub(x, y);
    return sign === '*' ? arithmetic.mul(x, y) : arithmetic.div(x, y);
  }

  private equal(a: Scalar, b: Scalar): Node {
    const { functions, graph } = this.around;
    if (a.kind === 'real') return functions.equal(a, b as Real).node;
    if (a.kind === 'whole') return integers.compare(graph, 'equal', a, b as Whole);
    return graph.not(exclusive(graph, a.node, b.node));
  }

  private test(sign: string, a: Scalar, b: Scalar): Node {
    const { functions, graph } = this.around;
    if (a.kind === 'truth') {
      if (sign === '&&') return graph.and(a.node, b.node);
      return sign === '||' ? graph.or(a.node, b.node) : exclusive(graph, a.node, b.node);
    }
    const op = sign.endsWith('=') ? 'lessEqual' : 'less';
    const [low, high] = sign.startsWith('<') ? [a, b] : [b, a];
    if (low.kind === 'whole') return integers.compare(graph, op, low, high as Whole);
    return functions[op](low as Real, high as Real).node;
  }

  private construct({ type, args: sources }: Of<'construct'>, args: readonly Value[]): Value {
    const parts = args.flat();
    if (type === 'int') return [this.toWhole(parts[0]!)];
    if (type === 'bool') return [this.toTruth(parts[0]!)];
    const size = type === 'float' ? 1 : Number(type.slice(3));
    const reals = parts.map((part) => this.toReal(part));
    const isSplat = sources.length === 1 && reals.length === 1;
    return Array.from({ length: size }, (_, i) => reals[isSplat ? 0 : i]!);
  }

  private toReal(scalar: Scalar): Real {
    const { arithmetic, functions, graph } = this.around;
    if (scalar.kind === 'real') return scalar;
    if (scalar.node.op === 'const') return arithmetic.literal(scalar.node.value);
    if (scalar.kind === 'whole') return functions.fromWhole(scalar.node, 'mediump');
    const [one, zero] = [graph.constant('i16', 16384), graph.constant('i16', 0)];
    return arithmetic.real('lowp', graph.select('i16', scalar.node, one, zero), 'lowp');
  }

  /** Towards 0, as the standard says. */
  private toWhole(scalar: Scalar): Whole {
    const { arithmetic, functions, graph } = this.around;
    if (scalar.kind === 'whole') return scalar;
    if (scalar.kind === 'truth') {
      return {
        kind: 'whole',
        node: graph.select('i16', scalar.node, graph.constant('i16', 1), graph.constant('i16', 0)),
      };
    }
    if (scalar.exact !== undefined) return integers.wholeOf(graph, Math.trunc(scalar.exact));
    if (scalar.whole !== undefined) return { kind: 'whole', node: scalar.whole };
    const down: Whole = { kind: 'whole', node: functions.wholeOf(scalar) };
    if (scalar.node.min >= 0) return down;
    const opposite: Whole = { kind: 'whole', node: functions.wholeOf(arithmetic.negative(scalar)) };
    const up = integers.combine(graph, '-', integers.wholeOf(graph, 0), opposite);
    const isNegative = graph.less(scalar.node, graph.constant(scalar.node.type, 0));
    return integers.select(graph, isNegative, up, down);
  }

  private toTruth(scalar: Scalar): Truth {
    const { graph } = this.around;
    if (scalar.kind === 'truth') return scalar;
    return { kind: 'truth', node: graph.not(graph.equal(scalar.node, graph.constant(scalar.node.type, 0))) };
  }
}

function exclusive(graph: Graph, a: Node, b: Node): Node {
  return graph.or(graph.and(a, graph.not(b)), graph.and(graph.not(a), b));
}

/** A value as its declaration wants it: the precision it asks for, in lowp where that holds the range. */
export function declared(
  { arithmetic, functions }: Surroundings,
  scalar: Scalar,
  precision: 'lowp' | 'mediump' | undefined,
  onTooWide: () => void,
): Scalar {
  if (scalar.kind !== 'real' || scalar.exact !== undefined) return scalar;
  const asked = precision ?? 'mediump';
  const value: Real = { ...scalar, precision: asked };
  if (asked === 'mediump' || value.format !== 'mediump') return value;
  const narrow = functions.narrowed(value);
  if (narrow.format === 'mediump') {
    onTooWide();
    return value;
  }
  const { form, whole } = value;
  const kept = arithmetic.real(narrow.format, narrow.node, asked, form);
  return whole === undefined ? kept : { ...kept, whole };
}
