/**
 * From the checked pattern to the graph: functions are inlined, loops unrolled, and both ways of a
 * condition computed and chosen from. What remains is straight arithmetic.
 */

import type { Diagnostic, Span } from '../../diagnostic.ts';
import { isPowerOfTwo } from '../../fixed/integers.ts';
import type { ParameterDescription } from '../../piece/schema.ts';
import type { TypedFunction, TypedPattern, TypedStatement } from '../check/typed.ts';
import { Graph, GraphTooLarge } from '../graph.ts';
import { inOrder, type Node, operandsOf } from '../ir.ts';
import { Arithmetic } from './arithmetic.ts';
import { declared, type Environment, Expressions, type Surroundings } from './expressions.ts';
import { Functions } from './functions.ts';
import { givenValue, type ParameterSlot, parameterValue, slotsFor } from './parameters.ts';
import type { Real, Truth, Value } from './value.ts';

export interface LoweredPattern {
  readonly levels: readonly [Node, Node, Node];
  readonly slots: readonly ParameterSlot[];
  readonly names: ReadonlyMap<Node, string>;
}

/** A pattern's budget per pixel. A plain sum of that size takes five steps of the lowering an operation. */
export const mostOperations = 20_000;
const mostSteps = 120_000;

class BudgetSpent extends Error {}

interface Return {
  readonly condition: Node;
  readonly value: Value;
}

export function lower(
  pattern: TypedPattern & { readonly constants: readonly TypedStatement[] },
  descriptions: readonly ParameterDescription[],
): { readonly lowered?: LoweredPattern; readonly diagnostics: readonly Diagnostic[] } {
  const run = new Lowering(pattern, descriptions);
  try {
    return run.run();
  } catch (fault) {
    if (!(fault instanceof BudgetSpent || fault instanceof GraphTooLarge)) throw fault;
    return { diagnostics: [tooMuchWork(run.span)] };
  }
}

function tooMuchWork(span: Span): Diagnostic {
  return {
    code: 'too-much-work',
    severity: 'error',
    message: `The pattern takes more than ${mostOperations} operations for each pixel.`,
    advice: 'Shorten loops, and compute what is the same for all pixels once.',
    span,
  };
}

class Lowering {
  private readonly graph = new Graph();
  private readonly arithmetic = new Arithmetic(this.graph);
  private readonly names = new Map<Node, string>();
  private readonly warnings: Diagnostic[] = [];
  private readonly constants: Environment = new Map();
  private readonly slots: readonly ParameterSlot[];
  private readonly around: Surroundings;
  private readonly expressions: Expressions;
  private steps = 0;
  /** Inside functions of our library, what is reported stands on the pattern's call of them. */
  private libraryDepth = 0;
  private readonly pattern: TypedPattern & { readonly constants: readonly TypedStatement[] };

  constructor(
    pattern: TypedPattern & { readonly constants: readonly TypedStatement[] },
    descriptions: readonly ParameterDescription[],
  ) {
    this.pattern = pattern;
    this.slots = slotsFor(descriptions, pattern.precisions);
    this.around = {
      graph: this.graph,
      arithmetic: this.arithmetic,
      functions: new Functions(this.arithmetic),
      given: (name) => givenValue(this.graph, this.arithmetic, name),
      parameter: (index) => {
        const slot = this.slots.find((one) => one.index === index)!;
        const precision = pattern.precisions.get(index)!;
        return parameterValue(this.graph, this.arithmetic, descriptions[index]!, slot, precision);
      },
      invoke: (target, args) => this.invoke(target, args),
      at: (span) => {
        if (this.libraryDepth === 0) this.arithmetic.span = span;
      },
      spend: () => {
        if (++this.steps > mostSteps) throw new BudgetSpent();
      },
    };
    this.expressions = new Expressions(this.around);
  }

  get span(): Span {
    return this.arithmetic.span;
  }

  run(): { readonly lowered?: LoweredPattern; readonly diagnostics: readonly Diagnostic[] } {
    const always = this.graph.constant('bool', 1);
    this.execute(this.pattern.constants, this.constants, always, []);
    const colour = this.invoke(this.pattern.light, []) as readonly Real[];
    const levels = colour.map((channel) => this.level(channel)) as [Node, Node, Node];
    const nodes = inOrder(levels);
    this.warnAboutOverflow(nodes, levels);
    if (nodes.filter((node) => operandsOf(node).length > 0).length > mostOperations) {
      return { diagnostics: [...this.warnings, tooMuchWork(this.span)] };
    }
    return { lowered: { levels, slots: this.slots, names: this.names }, diagnostics: this.warnings };
  }

  /** 0 if x < 0, 255 if x >= 1, else floor(256 x). */
  private level(x: Real): Node {
    const { graph } = this;
    const { type } = x.node;
    const fraction = x.format === 'lowp' ? 14 : 16;
    const largest = graph.constant(type === 'u16' ? 'u16' : type, 2 ** fraction - 1);
    const limited = graph.min(type, graph.max(type, x.node, graph.constant(type, 0)), largest);
    return graph.cast('u16', graph.shr(type, limited, fraction - 8));
  }

  private invoke(target: TypedFunction, args: readonly Value[]): Value {
    this.around.spend();
    this.libraryDepth += Number(target.ours);
    const environment: Environment = new Map(this.constants);
    target.parameters.forEach((parameter, i) => {
      environment.set(parameter, this.settled(parameter.precision, args[i]!, parameter.name));
    });
    const returns: Return[] = [];
    this.execute(target.body, environment, this.graph.constant('bool', 1), returns);
    // The first return whose condition holds gives the result; the last one is reached in any case.
    const last = returns.pop()!;
    const value = returns.reduceRight<Value>(
      (result, { condition, value: early }) =>
        early.map((scalar, i) => this.expressions.select(condition, scalar, result[i]!)),
      last.value,
    );
    this.libraryDepth -= Number(target.ours);
    return this.settled(target.precision, value, undefined);
  }

  private settled(precision: 'lowp' | 'mediump' | undefined, value: Value, name: string | undefined): Value {
    const suffixes = value.length === 1 ? [''] : ['_x', '_y', '_z'];
    return value.map((scalar, i) => {
      const settled = declared(this.around, scalar, precision, () => this.warnTooWide(name));
      const { node } = settled;
      if (name !== undefined && operandsOf(node).length > 0 && !this.names.has(node)) {
        this.names.set(node, `${name}${suffixes[i]}`);
      }
      return settled;
    });
  }

  /** Returns true where no statement behind these can be reached. */
  private execute(
    statements: readonly TypedStatement[],
    environment: Environment,
    path: Node,
    returns: Return[],
  ): boolean {
    for (const statement of statements) {
      this.around.spend();
      if (this.step(statement, environment, path, returns)) return true;
    }
    return false;
  }

  private step(statement: TypedStatement, environment: Environment, path: Node, returns: Return[]): boolean {
    switch (statement.kind) {
      case 'declare': {
        const { variable, value } = statement;
        // The standard leaves an unset variable undefined; here it is 0.
        const initial =
          value === undefined ? this.zero(variable.type) : this.expressions.lower(value, environment);
        environment.set(variable, this.settled(variable.precision, initial, variable.name));
        return false;
      }
      case 'assign': {
        const { variable, components } = statement;
        const value = this.expressions.lower(statement.value, environment);
        const present = environment.get(variable)!;
        const next =
          components === undefined
            ? value
            : present.map((scalar, i) => (components.includes(i) ? value[components.indexOf(i)]! : scalar));
        environment.set(variable, this.settled(variable.precision, next, variable.name));
        return false;
      }
      case 'block':
        return this.execute(statement.statements, environment, path, returns);
      case 'return':
        returns.push({ condition: path, value: this.expressions.lower(statement.value, environment) });
        return true;
      case 'for':
        return statement.values.some((value) => {
          const node = this.graph.constant(value >= -32768 && value <= 32767 ? 'i16' : 'i32', value);
          environment.set(statement.variable, [{ kind: 'whole', node }]);
          return this.execute(statement.body, environment, path, returns);
        });
      case 'if':
        return this.branch(statement, environment, path, returns);
    }
  }

  private branch(
    { condition: source, yes, no }: Extract<TypedStatement, { kind: 'if' }>,
    environment: Environment,
    path: Node,
    returns: Return[],
  ): boolean {
    const condition = (this.expressions.lower(source, environment)[0] as Truth).node;
    if (condition.op === 'const')
      return this.execute(condition.value === 1 ? yes : no, environment, path, returns);
    const taken: Environment = new Map(environment);
    const other: Environment = new Map(environment);
    const takenEnds = this.execute(yes, taken, this.graph.and(path, condition), returns);
    const otherEnds = this.execute(no, other, this.graph.and(path, this.graph.not(condition)), returns);
    if (takenEnds && otherEnds) return true;
    for (const [variable, before] of environment) {
      const [a, b] = [taken.get(variable)!, other.get(variable)!];
      if (a === before && b === before) continue;
      // Behind a way that has returned, only the values of the other one can still be read.
      if (takenEnds || otherEnds) environment.set(variable, takenEnds ? b : a);
      else {
        const merged = a.map((scalar, i) => this.expressions.select(condition, scalar, b[i]!));
        environment.set(variable, this.settled(variable.precision, merged, variable.name));
      }
    }
    return false;
  }

  private zero(type: string): Value {
    if (type === 'int') return [{ kind: 'whole', node: this.graph.constant('i16', 0) }];
    if (type === 'bool') return [{ kind: 'truth', node: this.graph.constant('bool', 0) }];
    const size = type === 'float' ? 1 : Number(type.slice(3));
    return Array.from({ length: size }, () => this.arithmetic.literal(0));
  }

  private warnTooWide(name: string | undefined): void {
    this.warn(
      'lowp-too-narrow',
      `${name === undefined ? 'The result' : `"${name}"`} may leave the range of lowp, -2 to 2, and is kept as mediump.`,
      'Declare it mediump, or clamp it.',
      this.span,
    );
  }

  /** A result that may wrap is harmless where all its users keep the fraction, or the low bits, alone. */
  private warnAboutOverflow(nodes: readonly Node[], levels: readonly Node[]): void {
    const { mayWrap } = this.arithmetic;
    if (mayWrap.size === 0) return;
    const wanted = new Set<Node>(levels);
    for (const node of [...nodes].reverse()) {
      const passesHarmlessly = (node.op === 'add' || node.op === 'sub') && !wanted.has(node);
      if (keepsLowBits(node) || passesHarmlessly) continue;
      for (const operand of operandsOf(node)) wanted.add(operand);
    }
    for (const node of nodes) {
      const span = mayWrap.get(node);
      if (span === undefined || !wanted.has(node)) continue;
      this.warn(
        'may-overflow',
        'This may leave the range of mediump, -32768 to 32768, and wrap around.',
        'Scale it down, clamp it, or use fract or mod of it.',
        span,
      );
    }
  }

  private warn(code: string, message: string, advice: string, span: Span): void {
    const isKnown = this.warnings.some((one) => one.code === code && one.span?.start === span.start);
    if (!isKnown && this.warnings.length < 20)
      this.warnings.push({ code, severity: 'warning', message, advice, span });
  }
}

/** The fraction, or the remainder by a power of two: the same whether the operand has wrapped or not. */
function keepsLowBits(node: Node): boolean {
  if (node.op === 'cast') return node.type === 'u16';
  return node.op === 'mod' && node.b.op === 'const' && isPowerOfTwo(node.b.value);
}
