/** Source text to tokens. Comments and white space vanish; what is no token becomes a diagnostic. */
import type { Diagnostic, Span } from '../../diagnostic.ts';
import { keywords, refusedWords } from './words.ts';

export type TokenKind = 'name' | 'keyword' | 'refused' | 'int' | 'float' | 'sign' | 'end';

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly span: Span;
}

/** Longest first. Signs outside the subset are read as well, so that the parser can refuse them by name. */
const signs =
  '<<= >>= ++ -- += -= *= /= %= == != <= >= && || ^^ << >> &= |= ^= + - * / % = < > ! ? : ; , . ( ) { } [ ] & | ^ ~'.split(
    ' ',
  );

const patterns: readonly (readonly [TokenKind | 'skip' | 'fault', RegExp])[] = [
  // Vertical tab and form feed are white space by the standard, but not to all of its compilers.
  ['skip', /[ \t\r\n]+/y],
  // By the standard a carriage return alone ends a line, and a backslash joins lines even inside a comment:
  // refused, also at the very end, where the shader's next line would follow, so that no comment hides code.
  ['skip', /\/\/(?:[^\r\n\\]|\\(?![\r\n]|$))*/y],
  ['skip', /\/\*(?:[^*\\]|\*(?!\/)|\\(?![\r\n]))*\*\//y],
  ['float', /(?:\d+\.\d*|\.\d+)(?:[eE][+-]?\d+)?[fF]?|\d+[eE][+-]?\d+[fF]?/y],
  ['int', /0[xX][0-9a-fA-F]+[uU]?|\d+[uUfF]?/y],
  ['name', /[A-Za-z_][A-Za-z0-9_]*/y],
];

interface Lexed {
  readonly tokens: readonly Token[];
  readonly diagnostics: readonly Diagnostic[];
}

const mostFaults = 20;

export function lex(source: string): Lexed {
  const tokens: Token[] = [];
  const diagnostics: Diagnostic[] = [];
  let at = 0;
  let line = 1;
  let lineStart = 0;

  const spanTo = (end: number): Span => ({ start: at, end, line, column: at - lineStart + 1 });
  const advance = (end: number) => {
    for (let i = source.indexOf('\n', at); i >= 0 && i < end; i = source.indexOf('\n', i + 1)) {
      line++;
      lineStart = i + 1;
    }
    at = end;
  };
  const fault = (length: number, code: string, message: string, advice: string) => {
    if (diagnostics.length < mostFaults) {
      diagnostics.push({ code, severity: 'error', message, advice, span: spanTo(at + length) });
    }
    advance(at + length);
  };

  scan: while (at < source.length) {
    for (const [kind, pattern] of patterns) {
      pattern.lastIndex = at;
      const text = pattern.exec(source)?.[0];
      if (text === undefined) continue;
      if (kind !== 'skip')
        tokens.push({ kind: classify(kind as TokenKind, text), text, span: spanTo(at + text.length) });
      advance(at + text.length);
      continue scan;
    }
    const sign = signs.find((text) => source.startsWith(text, at));
    if (sign !== undefined && !source.startsWith('/*', at)) {
      tokens.push({ kind: 'sign', text: sign, span: spanTo(at + sign.length) });
      advance(at + sign.length);
    } else if (source.startsWith('/*', at)) {
      fault(source.length - at, 'comment-not-closed', 'This comment is not closed.', 'End it with */.');
    } else if (source[at] === '#') {
      const end = source.indexOf('\n', at);
      fault(
        (end < 0 ? source.length : end) - at,
        'no-preprocessor',
        'Lines that begin with # are not part of the pattern language.',
        'Use a const instead of a #define, and plain code instead of #if.',
      );
    } else {
      const character = String.fromCodePoint(source.codePointAt(at) ?? 0);
      fault(
        character.length,
        'unknown-character',
        `The character ${JSON.stringify(character)} has no meaning here.`,
        'Remove it; letters, digits and the usual signs are enough.',
      );
    }
  }
  tokens.push({ kind: 'end', text: 'the end', span: spanTo(at) });
  return { tokens, diagnostics };
}

function classify(kind: TokenKind, text: string): TokenKind {
  if (kind !== 'name') return kind;
  if (keywords.has(text)) return 'keyword';
  return refusedWords.has(text) ? 'refused' : 'name';
}
