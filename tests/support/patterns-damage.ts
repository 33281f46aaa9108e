/** Damaged sources: what a tired hand, a bad paste or a broken file makes of a valid pattern. */
import { lex, type Token } from '../../engine/pattern/parse/lexer.ts';
import type { Chance } from './generate/chance.ts';

interface Piece {
  text: string;
  /** White space and comments before it. */
  readonly before: string;
}

const noise = [
  '',
  ' ',
  '\n',
  '\r',
  '\t',
  '\0',
  '"',
  "'",
  '\\',
  '#',
  '@',
  '$',
  '`',
  'é',
  '灯',
  '😀',
  '\ud800',
  '//',
  '/*',
  '*/',
];
const strangers = [
  ...[
    'vec4',
    'while',
    'discard',
    'uint',
    'mat2',
    'out',
    'inout',
    'in',
    'struct',
    'switch',
    'do',
    'break',
    'highp',
  ],
  ...[
    'precision',
    'void',
    '1',
    '1.0',
    '0x1F',
    '1u',
    '1e9',
    '32769',
    '.5',
    'true',
    '==',
    '=',
    '&',
    '<<',
    '[',
    ']',
  ],
  ...[
    '{',
    '}',
    '(',
    ')',
    ';',
    ',',
    '?',
    ':',
    '.',
    '.xyz',
    '.r',
    '++',
    '--',
    '-',
    '!',
    '+=',
    'lowp',
    'mediump',
  ],
  ...[
    'float',
    'int',
    'bool',
    'vec2',
    'vec3',
    'const',
    'uniform',
    'if',
    'else',
    'for',
    'return',
    'x',
    'light',
  ],
];

/** Words and signs that may stand in one another's place. */
const operators = [
  ['+', '-', '*', '/', '%', '<', '<=', '>', '>=', '==', '!=', '&&', '||', '^^'],
  ['=', '+=', '-=', '*=', '/=', '%='],
  ['++', '--'],
  ['float', 'vec2', 'vec3', 'int', 'bool'],
  ['lowp', 'mediump'],
  ['true', 'false'],
];

/** A source with one to `most` changes, of tokens or of single characters. */
export function damage(source: string, chance: Chance, most = 3): string {
  let text = source;
  for (let change = chance.whole(1, most); change > 0; change--) {
    const how = chance.flip(0.7) ? exchangeAlike : chance.pick([damageTokens, damageCharacters]);
    text = how(text, chance);
  }
  return text;
}

/** One token becomes another of its kind, from elsewhere in the source or from outside: often still a pattern. */
function exchangeAlike(source: string, chance: Chance): string {
  const { tokens } = lex(source);
  const token = chance.pick(tokens);
  const kindOf = ({ kind, text }: Token) => operators.find((set) => set.includes(text))?.[0] ?? kind;
  const others = tokens.filter((other) => kindOf(other) === kindOf(token)).map(({ text }) => text);
  const choices = [...others, ...(operators.find((set) => set.includes(token.text)) ?? [])];
  const text = token.kind === 'end' ? '' : chance.pick(choices);
  return source.slice(0, token.span.start) + text + source.slice(token.span.end);
}

function damageTokens(source: string, chance: Chance): string {
  const pieces = piecesOf(source);
  if (pieces.length < 2) return source;
  const i = chance.whole(0, pieces.length - 1);
  const j = chance.flip(0.5) ? Math.min(i + 1, pieces.length - 1) : chance.whole(0, pieces.length - 1);
  const changes = [
    () => pieces.splice(i, 1),
    () => pieces.splice(i, chance.whole(1, 8)),
    () => pieces.splice(i, 0, { ...pieces[i]! }),
    () => pieces.splice(i, 0, ...pieces.slice(j, j + chance.whole(1, 12)).map((one) => ({ ...one }))),
    () => {
      [pieces[i]!.text, pieces[j]!.text] = [pieces[j]!.text, pieces[i]!.text];
    },
    () => {
      pieces[i]!.text = pieces[j]!.text;
    },
    () => {
      pieces[i]!.text = chance.pick(strangers);
    },
    () => pieces.splice(i, 0, { text: chance.pick(strangers), before: ' ' }),
  ];
  chance.pick(changes)();
  return pieces.map(({ before, text }) => before + text).join('');
}

function piecesOf(source: string): Piece[] {
  let end = 0;
  return lex(source).tokens.map(({ span }) => {
    const piece = { before: source.slice(end, span.start), text: source.slice(span.start, span.end) };
    end = span.end;
    return piece;
  });
}

function damageCharacters(source: string, chance: Chance): string {
  const at = chance.whole(0, source.length);
  const changes = [
    () => source.slice(0, at) + source.slice(at + 1),
    () => source.slice(0, at) + chance.pick(noise) + source.slice(at),
    () => source.slice(0, at) + String.fromCharCode(chance.whole(1, 127)) + source.slice(at + 1),
    () => source.slice(0, at),
  ];
  return chance.pick(chance.flip(0.1) ? changes : changes.slice(0, 3))();
}
