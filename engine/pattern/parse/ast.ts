/** What the parser reads, before anything is known of types. */
import type { Span } from '../../diagnostic.ts';
import type { Precision, TypeName } from './words.ts';

export type BinarySign =
  | '+'
  | '-'
  | '*'
  | '/'
  | '%'
  | '<'
  | '<='
  | '>'
  | '>='
  | '=='
  | '!='
  | '&&'
  | '||'
  | '^^';
export type UnarySign = '+' | '-' | '!';
export type AssignSign = '=' | '+=' | '-=' | '*=' | '/=' | '%=';

export type Expression = { readonly span: Span } & (
  | { readonly kind: 'int'; readonly value: number }
  | { readonly kind: 'float'; readonly value: number }
  | { readonly kind: 'bool'; readonly value: boolean }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'call'; readonly callee: string; readonly args: readonly Expression[] }
  | { readonly kind: 'unary'; readonly sign: UnarySign; readonly operand: Expression }
  | {
      readonly kind: 'binary';
      readonly sign: BinarySign;
      readonly left: Expression;
      readonly right: Expression;
    }
  | {
      readonly kind: 'choice';
      readonly condition: Expression;
      readonly yes: Expression;
      readonly no: Expression;
    }
  | { readonly kind: 'swizzle'; readonly of: Expression; readonly field: string }
);

export interface Typing {
  readonly type: TypeName;
  readonly precision: Precision | undefined;
}

export interface Declarator {
  readonly name: string;
  readonly span: Span;
  readonly value: Expression | undefined;
}

export type Statement = { readonly span: Span } & (
  | {
      readonly kind: 'declare';
      readonly constant: boolean;
      readonly typing: Typing;
      readonly declarators: readonly Declarator[];
    }
  | {
      readonly kind: 'assign';
      readonly target: string;
      readonly field: string | undefined;
      readonly sign: AssignSign;
      readonly value: Expression;
    }
  | {
      readonly kind: 'if';
      readonly condition: Expression;
      readonly yes: Statement;
      readonly no: Statement | undefined;
    }
  | {
      readonly kind: 'for';
      readonly variable: string;
      readonly typing: Typing;
      readonly from: Expression;
      readonly condition: Expression;
      readonly step: Statement;
      readonly body: Statement;
    }
  | { readonly kind: 'block'; readonly statements: readonly Statement[] }
  | { readonly kind: 'return'; readonly value: Expression }
  /** An expression for its own sake: it has no effect, which the check reports. */
  | { readonly kind: 'evaluate'; readonly value: Expression }
);

export interface FunctionDefinition {
  readonly kind: 'function';
  readonly span: Span;
  readonly name: string;
  readonly nameSpan: Span;
  readonly result: Typing;
  readonly parameters: readonly { readonly name: string; readonly span: Span; readonly typing: Typing }[];
  readonly body: readonly Statement[];
}

export interface UniformDeclaration {
  readonly kind: 'uniform';
  readonly span: Span;
  readonly typing: Typing;
  readonly names: readonly { readonly name: string; readonly span: Span }[];
}

export interface ConstantDeclaration {
  readonly kind: 'constant';
  readonly span: Span;
  readonly typing: Typing;
  readonly declarators: readonly Declarator[];
}

export type TopLevel = FunctionDefinition | UniformDeclaration | ConstantDeclaration;
