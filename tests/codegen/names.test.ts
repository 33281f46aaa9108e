import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isReserved, Names, transliterate } from '../../codegen/names.ts';

describe('identifiers from names', () => {
  it('S6 keeps what a reader recognises', () => {
    expect(transliterate('Lamp lit')).toBe('lamp_lit');
    expect(transliterate("Ferryman's hat")).toBe('ferryman_s_hat');
    expect(transliterate('Frühlingsfest am Fluß')).toBe('fruhlingsfest_am_fluss');
    expect(transliterate('Œil de bœuf, nº 2')).toBe('oeil_de_boeuf_no_2');
    expect(transliterate('☾ → ☀')).toBe('');
  });

  it('S6 gives a number where nothing is left or the name is taken', () => {
    const names = new Names();
    expect(names.take('look', '☾', 3)).toBe('look_3');
    expect(names.take('look', 'Glut', 1)).toBe('look_glut');
    expect(names.take('look', 'glut!', 2)).toBe('look_glut_2');
    expect(names.take('clip', 'glut', 1)).toBe('clip_glut');
  });

  it('S6 is unique, plain and free for any names at all (seed 7)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }), { maxLength: 40 }),
        (given) => {
          const names = new Names();
          const taken = given.map((name, index) => names.take('look', name, index + 1));
          expect(new Set(taken).size).toBe(taken.length);
          for (const identifier of taken) {
            expect(identifier).toMatch(/^look_[a-z0-9]+(_[a-z0-9]+)*$/);
            expect(isReserved(identifier)).toBe(false);
          }
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it.each([
    'abs',
    'min',
    'bit',
    'radians',
    'word',
    'int',
    'and',
    'PORTB',
    'F_CPU',
    'A0',
    '_BV',
    'my__name',
    'index',
  ])('S6 knows that %s means something already', (word) => expect(isReserved(word)).toBe(true));

  it.each(['shade', 'wave2', 'tint', 'Abs', 'look_1'])('S6 leaves %s to the maker', (word) =>
    expect(isReserved(word)).toBe(false),
  );
});
