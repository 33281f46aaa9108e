/** Guessing what was meant: the distance by its laws, the guess by examples. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDistance, meantInstead, nearest } from '../../engine/piece/nearest.ts';

const distance = (a: string, b: string) => editDistance(a, b, 100);
const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 8 });

describe('the distance', () => {
  // Worked examples of Damerau (1964): one letter wrong, missing, too much, or two swapped.
  test.each([
    ['tide', 'tide', 0],
    ['tide', 'tede', 1],
    ['tide', 'tie', 1],
    ['tide', 'tidel', 1],
    ['tide', 'tdie', 1],
    ['kitten', 'sitting', 3],
    ['', 'dew', 3],
  ])('from %s to %s is %i', (a, b, expected) => {
    expect(distance(a, b)).toBe(expected);
  });

  test('is the same both ways and 0 only for equals (seed 21)', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(distance(a, b)).toBe(distance(b, a));
        expect(distance(a, b) === 0).toBe(a === b);
        expect(distance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
      { seed: 21, numRuns: 500 },
    );
  });

  test('stops counting above its limit', () => {
    expect(editDistance('lantern', 'moonrise', 2)).toBe(3);
    expect(editDistance('x'.repeat(1e6), 'y'.repeat(1e6), 2)).toBe(3);
  });
});

describe('the guess', () => {
  test('is the nearest word, whatever its case', () => {
    expect(nearest('multply', ['normal', 'multiply', 'screen'])).toBe('multiply');
    expect(nearest('SCREEN', ['normal', 'multiply', 'screen'])).toBe('screen');
  });
  test('is none where all are far', () => {
    expect(nearest('hinge', ['normal', 'multiply', 'screen'])).toBeUndefined();
    expect(nearest('', ['normal'])).toBeUndefined();
  });
  test('turns into advice', () => {
    expect(meantInstead('brin', ['brim', 'badge'])).toBe('Did you mean "brim"?');
    expect(meantInstead('x', ['brim', 'badge'])).toBe('Choose one of "brim", "badge".');
    expect(meantInstead('x', [])).toBe('There is none to choose from yet.');
    const many = Array.from({ length: 20 }, (_, i) => `tentacle ${i}`);
    expect(meantInstead('x', many)).toMatch(/"tentacle 11" and others\.$/);
  });
});
