/** A place in the token list, with the parser's one way to complain: it stops the statement and recovers. */
import type { Diagnostic, Span } from '../../diagnostic.ts';
import type { Token } from './lexer.ts';
import { isReservedName, longestName } from './words.ts';

/** Thrown inside the parser only, caught at the next statement; never leaves it. */
export class SyntaxFault extends Error {}

const mostDiagnostics = 50;
/** Nesting of parentheses, blocks and conditions; the parser and everything after it recurse this deep. */
export const mostNesting = 32;

export class Cursor {
  readonly diagnostics: Diagnostic[] = [];
  private at = 0;
  private depth = 0;

  constructor(private readonly tokens: readonly Token[]) {}

  get token(): Token {
    return this.tokens[this.at]!;
  }

  get next(): Token {
    return this.tokens[Math.min(this.at + 1, this.tokens.length - 1)]!;
  }

  get previous(): Token {
    return this.tokens[Math.max(this.at - 1, 0)]!;
  }

  get atEnd(): boolean {
    return this.token.kind === 'end';
  }

  is(text: string): boolean {
    return this.token.text === text && (this.token.kind === 'sign' || this.token.kind === 'keyword');
  }

  take(): Token {
    const token = this.token;
    if (token.kind !== 'end') this.at++;
    return token;
  }

  accept(text: string): boolean {
    if (!this.is(text)) return false;
    this.at++;
    return true;
  }

  expect(text: string, after: string): Token {
    if (this.is(text)) return this.take();
    this.refuseWord();
    throw this.fault(
      'expected',
      `Here stands ${describe(this.token)}, but ${after} needs "${text}".`,
      `Put "${text}" here.`,
      this.token.span,
    );
  }

  expectName(what: string): Token {
    if (this.token.kind === 'name') {
      const token = this.take();
      if (isReservedName(token.text)) {
        this.report(
          'reserved-name',
          `The name "${token.text}" is reserved.`,
          'Choose a name without "__" that does not begin with gl_, GL_, webgl_ or weft_.',
          token.span,
        );
      }
      if (token.text.length > longestName) {
        this.report(
          'name-too-long',
          `The name has more than ${longestName} characters.`,
          'Choose a shorter one.',
          token.span,
        );
      }
      return token;
    }
    this.refuseWord();
    throw this.fault(
      'expected-name',
      `Here stands ${describe(this.token)}, but ${what} needs a name.`,
      'Write a name of letters, digits and underscores that is no word of the language.',
      this.token.span,
    );
  }

  /** Complains about a word or sign that GLSL has and the pattern language has not. */
  refuseWord(): void {
    if (this.token.kind !== 'refused') return;
    throw this.fault(
      'not-in-the-language',
      `"${this.token.text}" is not part of the pattern language.`,
      refusalAdvice[this.token.text] ?? 'Use float, vec2, vec3, int and bool, functions, if and for.',
      this.token.span,
    );
  }

  /** Runs a part of the parser one level deeper. */
  nested<T>(parse: () => T): T {
    if (this.depth >= mostNesting) {
      throw this.fault(
        'nested-too-deep',
        `This is nested more than ${mostNesting} deep.`,
        'Give an inner part a name of its own, or make it a function.',
        this.token.span,
      );
    }
    this.depth++;
    try {
      return parse();
    } finally {
      this.depth--;
    }
  }

  report(code: string, message: string, advice: string, span: Span): void {
    if (this.diagnostics.length < mostDiagnostics) {
      this.diagnostics.push({ code, severity: 'error', message, advice, span });
    }
  }

  fault(code: string, message: string, advice: string, span: Span): SyntaxFault {
    this.report(code, message, advice, span);
    return new SyntaxFault(message);
  }

  /** Skips to behind the next `;`, or to the `}` that closes the present block. */
  recover(): void {
    let depth = 0;
    while (!this.atEnd) {
      if (this.is('{')) depth++;
      else if (this.is('}')) {
        if (depth === 0) return;
        depth--;
        if (depth === 0) {
          this.take();
          return;
        }
      } else if (this.is(';') && depth === 0) {
        this.take();
        return;
      }
      this.take();
    }
  }

  /** Skips to behind the `)` that closes the bracket around this place; false where a brace comes first. */
  recoverBehindBracket(): boolean {
    for (let depth = 1; depth > 0; this.take()) {
      if (this.atEnd || this.is('{') || this.is('}')) return false;
      if (this.is('(')) depth++;
      else if (this.is(')')) depth--;
    }
    return true;
  }

  spanFrom(start: Span): Span {
    return { ...start, end: Math.max(this.previous.span.end, start.start) };
  }
}

export function describe(token: Token): string {
  return token.kind === 'end' ? 'the end of the source' : `"${token.text}"`;
}

const refusalAdvice: Readonly<Record<string, string>> = {
  while: 'Use a for loop with constant bounds.',
  do: 'Use a for loop with constant bounds.',
  break: 'Let the loop run through and choose with if.',
  continue: 'Put the rest of the loop into an if.',
  switch: 'Use if and else.',
  discard: 'Return black where nothing shall shine.',
  out: 'Return the value; a vec3 carries three.',
  inout: 'Return the value; a vec3 carries three.',
  in: 'Leave "in" out: parameters are inputs.',
  vec4: 'Use a vec3; light has no fourth channel here.',
  uint: 'Use int.',
  highp: 'Use mediump, or lowp for what stays between -2 and 2.',
  void: 'Let the function return its result.',
  struct: 'Use single values or a vec3.',
  precision: 'Write lowp or mediump where a value is declared.',
};
