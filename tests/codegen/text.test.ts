import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alignComments,
  commentLines,
  plain,
  quoted,
  stringLiteral,
  utf8,
} from '../../codegen/player/text.ts';

/** What a C++ compiler makes of a literal that holds only printable ASCII and octal escapes. */
function bytesOfLiteral(literal: string): number[] {
  expect(literal).toMatch(/^"(?:[^"\\?]|\\[0-7]{3})*"$/);
  return [...literal.slice(1, -1).matchAll(/\\([0-7]{3})|./g)].map(([text, octal]) =>
    octal === undefined ? text.charCodeAt(0) : Number.parseInt(octal, 8),
  );
}

describe('words of the maker in C++', () => {
  it('S7 cannot leave a comment', () => {
    expect(quoted('ends */ here')).toBe('"ends * / here"');
    expect(quoted('back\\')).toBe('"back/"');
    expect(quoted('what??/')).toBe('"what? ?/"');
    expect(quoted('two\nlines\u2028three\u202e')).toBe('"two lines three "');
  });

  it('S7 stays on one line and without marks of its own for any text (seed 11)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const safe = plain(text);
        expect(safe).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\\]|\*\/|\?\?/u);
      }),
      { seed: 11, numRuns: 1000 },
    );
  });

  it('S7 is the same bytes in a string (seed 13)', () => {
    const encoder = new TextEncoder();
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(utf8(text)).toEqual([...encoder.encode(text)]);
        expect(bytesOfLiteral(stringLiteral(text))).toEqual([...encoder.encode(text)]);
      }),
      { seed: 13, numRuns: 500 },
    );
  });

  it('breaks comments before column 104, without losing a word', () => {
    const words = Array.from({ length: 60 }, (_, i) => `word${i}`).join(' ');
    const lines = commentLines(words, '', '  ');
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(104);
    expect(lines.map((line) => line.replace(/^\/\/ +/, '')).join(' ')).toBe(words);
  });

  it('aligns the comments behind neighbouring lines only', () => {
    expect(alignComments(['a;  // one', 'bcd; // two', 'e;', 'fg; // three'])).toEqual([
      'a;    // one',
      'bcd;  // two',
      'e;',
      'fg;  // three',
    ]);
  });
});
