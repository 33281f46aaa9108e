/** A checked pattern: every name resolved, every expression typed. The lowering reads nothing else. */
import type { Span } from '../../diagnostic.ts';
import type { BinarySign, UnarySign } from '../parse/ast.ts';
import type { Precision, TypeName } from '../parse/words.ts';
import type { BuiltinName } from './builtins.ts';

/** What the engine hands to every pattern, read-only. */
export const givenNames = ['along', 'place', 'pixel', 'count', 'time', 'turn', 'seed'] as const;
export type GivenName = (typeof givenNames)[number];

export const givenTypes: Record<GivenName, { type: TypeName; precision: Precision | undefined }> = {
  along: { type: 'float', precision: 'lowp' },
  place: { type: 'vec2', precision: 'lowp' },
  pixel: { type: 'int', precision: undefined },
  count: { type: 'int', precision: undefined },
  time: { type: 'float', precision: 'mediump' },
  turn: { type: 'float', precision: 'lowp' },
  seed: { type: 'int', precision: undefined },
};

/** One declared variable; identity is the object, so names may hide each other. */
export interface Variable {
  readonly name: string;
  readonly type: TypeName;
  readonly precision: Precision | undefined;
  readonly constant: boolean;
}

export interface TypedFunction {
  readonly name: string;
  /** Of our library: its spans are no places in the pattern's source. */
  readonly ours: boolean;
  readonly type: TypeName;
  readonly precision: Precision | undefined;
  readonly parameters: readonly Variable[];
  readonly body: readonly TypedStatement[];
}

export type TypedExpression = { readonly type: TypeName; readonly span: Span; readonly constant: boolean } & (
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'bool'; readonly value: boolean }
  | { readonly kind: 'variable'; readonly variable: Variable }
  | { readonly kind: 'given'; readonly name: GivenName }
  /** Index into the parameter descriptions. */
  | { readonly kind: 'parameter'; readonly index: number }
  | { readonly kind: 'gradient'; readonly index: number; readonly position: TypedExpression }
  | { readonly kind: 'builtin'; readonly name: BuiltinName; readonly args: readonly TypedExpression[] }
  | { readonly kind: 'invoke'; readonly target: TypedFunction; readonly args: readonly TypedExpression[] }
  | { readonly kind: 'construct'; readonly args: readonly TypedExpression[] }
  | { readonly kind: 'unary'; readonly sign: UnarySign; readonly operand: TypedExpression }
  | {
      readonly kind: 'binary';
      readonly sign: BinarySign;
      readonly left: TypedExpression;
      readonly right: TypedExpression;
    }
  | {
      readonly kind: 'choice';
      readonly condition: TypedExpression;
      readonly yes: TypedExpression;
      readonly no: TypedExpression;
    }
  | { readonly kind: 'swizzle'; readonly of: TypedExpression; readonly components: readonly number[] }
);

export type TypedStatement = { readonly span: Span } & (
  | { readonly kind: 'declare'; readonly variable: Variable; readonly value: TypedExpression | undefined }
  | {
      readonly kind: 'assign';
      readonly variable: Variable;
      /** Components that are set, in order; undefined for the whole variable. */
      readonly components: readonly number[] | undefined;
      readonly value: TypedExpression;
    }
  | {
      readonly kind: 'if';
      readonly condition: TypedExpression;
      readonly yes: readonly TypedStatement[];
      readonly no: readonly TypedStatement[];
    }
  | {
      readonly kind: 'for';
      readonly variable: Variable;
      /** Values of the loop variable, one a turn: bounds are constants. */
      readonly values: readonly number[];
      readonly body: readonly TypedStatement[];
    }
  | { readonly kind: 'block'; readonly statements: readonly TypedStatement[] }
  | { readonly kind: 'return'; readonly value: TypedExpression }
);

export interface TypedPattern {
  readonly light: TypedFunction;
  /** Uniforms that were declared, by index into the parameter descriptions. */
  readonly precisions: ReadonlyMap<number, Precision>;
}
