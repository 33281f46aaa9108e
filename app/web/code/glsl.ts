/** Colours for the pattern language in the editor: our subset of GLSL ES 3.00, by its own words. */
import type { languages } from 'monaco-editor/editor/editor.api';

export const patternLanguage = 'weftlight-pattern';

export const patternConfiguration: languages.LanguageConfiguration = {
  comments: { lineComment: '//', blockComment: ['/*', '*/'] },
  brackets: [
    ['{', '}'],
    ['(', ')'],
    ['[', ']'],
  ],
  autoClosingPairs: [
    { open: '{', close: '}' },
    { open: '(', close: ')' },
  ],
};

export const patternGrammar: languages.IMonarchLanguage = {
  types: ['float', 'int', 'bool', 'vec2', 'vec3', 'void'],
  qualifiers: ['uniform', 'const', 'lowp', 'mediump', 'highp', 'in', 'precision'],
  flow: ['if', 'else', 'for', 'return', 'break', 'continue'],
  constants: ['true', 'false'],
  given: ['along', 'place', 'pixel', 'count', 'time', 'turn', 'seed'],
  builtins: [
    ...['abs', 'sign', 'floor', 'ceil', 'fract', 'mod', 'min', 'max', 'clamp', 'mix', 'step', 'smoothstep'],
    ...['sqrt', 'inversesqrt', 'sin', 'cos', 'atan', 'pow', 'exp2', 'log2'],
    ...['length', 'distance', 'dot', 'normalize', 'radians', 'degrees'],
  ],
  tokenizer: {
    root: [
      [/gradient_\w+/, 'gradient'],
      [
        /[A-Za-z_]\w*/,
        {
          cases: {
            '@types': 'type',
            '@qualifiers': 'qualifier',
            '@flow': 'keyword',
            '@constants': 'number',
            '@given': 'given',
            '@builtins': 'builtin',
            '@default': 'identifier',
          },
        },
      ],
      [/\d*\.\d+([eE][+-]?\d+)?|\d+\.\d*([eE][+-]?\d+)?|\d+[eE][+-]?\d+|\d+/, 'number'],
      [/\/\/.*$/, 'comment'],
      [/\/\*/, 'comment', '@comment'],
      [/[{}()[\]]/, '@brackets'],
      [/[-+*/%=<>!&|?:,;.]/, 'operator'],
      [/\s+/, 'white'],
    ],
    comment: [
      [/[^*]+/, 'comment'],
      [/\*\//, 'comment', '@pop'],
      [/\*/, 'comment'],
    ],
  },
};
