/** The patterns of the library: their descriptions, and that a shipped revision never changes a bit. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compilePattern } from '../../engine/pattern/compile.ts';
import {
  findLibraryPattern,
  type LibraryPattern,
  libraryPatterns,
  referenceOf,
} from '../../engine/pattern/library.ts';
import { fragmentShader } from '../../engine/pattern/prelude.ts';
import { parameter as parameterSchema } from '../../engine/piece/schema/pattern.ts';
import { compiled, drawer, programOf, type Settings } from '../support/patterns.ts';

/** What pieces rely on: kind, range and default of each parameter. */
const promised: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'still/1': { tint: 'colour' },
  'sleeper/1': { tint: 'colour', period: 'number 1..20 (5)', lowest: 'number 0..1 (0.1)' },
  'ribbon/1': { ribbon: 'gradient', repeats: 'number 0.25..8 (1)', shift: 'number 0..1 (0)' },
  'millrace/1': {
    water: 'gradient',
    period: 'number 0.5..30 (4)',
    repeats: 'number 0.25..8 (1)',
    backwards: 'yes-no',
  },
  'windrose/1': { petals: 'whole 1..6 (1)', period: 'number 1..60 (12)', richness: 'number 0..1 (1)' },
  'wake/1': {
    bow: 'colour',
    water: 'colour',
    period: 'number 0.5..20 (3)',
    tail: 'number 0.05..1 (0.4)',
    backwards: 'yes-no',
  },
  'procession/1': {
    lantern: 'colour',
    night: 'colour',
    lit: 'whole 1..16 (2)',
    gap: 'whole 1..16 (4)',
    beat: 'number 0.02..2 (0.12)',
  },
  'tide/1': { over: 'colour', under: 'colour', softness: 'number 0..0.5 (0.15)', backwards: 'yes-no' },
  'dew/1': { drop: 'colour', share: 'number 0.02..1 (0.25)', period: 'number 0.2..10 (1.5)' },
  'brazier/1': { heat: 'gradient', pace: 'number 0.2..4 (1)', reach: 'number 0.2..1 (0.7)' },
  'mist/1': { mist: 'gradient', size: 'number 0.5..8 (2)', pace: 'number 0..2 (0.2)' },
  'raindrop/1': {
    ring: 'colour',
    pool: 'colour',
    atX: 'number -1..1 (0)',
    atY: 'number -1..1 (0)',
    period: 'number 0.5..10 (2)',
    spacing: 'number 0.1..2 (0.6)',
  },
};

describe('G15 the library', () => {
  test('has twelve patterns with the parameters that pieces rely on', () => {
    const told = Object.fromEntries(
      libraryPatterns.map((pattern) => [
        referenceOf(pattern),
        Object.fromEntries(
          pattern.parameters.map((one) => [
            one.name,
            'min' in one ? `${one.kind} ${one.min}..${one.max} (${one.default})` : one.kind,
          ]),
        ),
      ]),
    );
    expect(told).toEqual(promised);
  });

  test.each(libraryPatterns)(
    '$name: its parameters are as the piece file would have them',
    ({ parameters }) => {
      for (const one of parameters) {
        expect(parameterSchema.safeParse(one).error).toBeUndefined();
        if ('min' in one) {
          expect(one.default).toBeGreaterThanOrEqual(one.min);
          expect(one.default).toBeLessThanOrEqual(one.max);
        }
      }
      expect(new Set(parameters.map(({ label }) => label)).size).toBe(parameters.length);
    },
  );

  test.each(libraryPatterns)('$name: compiles without a warning', ({ source, parameters }) => {
    expect(compilePattern(source, parameters).diagnostics).toEqual([]);
  });

  test('each is found by its name and revision, and by nothing else', () => {
    for (const pattern of libraryPatterns) expect(findLibraryPattern(referenceOf(pattern))).toBe(pattern);
    for (const other of ['wake', 'wake/2', 'wake/1 ', '', '/1'])
      expect(findLibraryPattern(other)).toBeUndefined();
  });

  test('titles differ, and each says in one sentence what is seen', () => {
    expect(new Set(libraryPatterns.map(({ title }) => title)).size).toBe(libraryPatterns.length);
    for (const { sees, keywords, source } of libraryPatterns) {
      expect(sees).toMatch(/^[A-Z][^\n]+\.$/);
      expect(keywords.length).toBeGreaterThan(0);
      expect(source).toMatch(/^\/\/ [A-Z]/);
    }
  });

  test('as a shader, each carries its own source untouched', () => {
    for (const pattern of libraryPatterns) expect(fragmentShader(pattern)).toContain(pattern.source);
  });
});

describe('G16 a shipped revision never changes a bit', () => {
  const file = new URL('./library-golden.json', import.meta.url);
  const isUpdate = process.env.WEFTLIGHT_NEW_REVISION === 'yes';

  test('the frames of every revision hash to what they did when it was shipped', () => {
    const hashes = Object.fromEntries(
      libraryPatterns.map((pattern) => [referenceOf(pattern), frameHash(pattern)]),
    );
    // Only for a pattern or a revision that is new: say so by WEFTLIGHT_NEW_REVISION=yes.
    if (isUpdate) writeFileSync(file, `${JSON.stringify(hashes, null, 2)}\n`);
    expect(hashes).toEqual(JSON.parse(readFileSync(file, 'utf8')));
  });

  test('the hash tells frames apart', () => {
    const hashes = libraryPatterns.map(frameHash);
    expect(new Set(hashes).size).toBe(hashes.length);
    const [wake] = libraryPatterns.filter(({ name }) => name === 'wake');
    const nearly = { ...wake!, source: wake!.source.replace('glow * glow', 'glow * glow * 0.999') };
    expect(frameHash(nearly)).not.toBe(frameHash(wake!));
  });
});

/** Every pixel of zones of four sizes at moments up to nine hours, with settings at default, lowest and highest. */
function frameHash({ source, parameters }: LibraryPattern): string {
  const pattern = compiled({ source, parameters });
  const hash = createHash('sha256');
  const settings: Settings[] = [
    {},
    Object.fromEntries(parameters.map((one) => [one.name, 'min' in one ? one.min : one.default])),
    Object.fromEntries(parameters.map((one) => [one.name, 'max' in one ? one.max : one.default])),
  ];
  for (const setting of settings)
    for (const count of [1, 7, 60, 300]) {
      const draw = drawer(programOf(pattern, setting, { count, seed: 41 * count }));
      for (const [at, milliseconds] of [0, 20, 1234, 59_980, 3_600_020, 32_399_980].entries()) {
        const time =
          Math.floor(milliseconds / 1000) * 65_536 + Math.floor(((milliseconds % 1000) * 65_536) / 1000);
        for (let index = 0; index < count; index++) {
          // Places that wind outwards: nothing here depends on chance.
          const [placeX, placeY] = [
            ((index * 7919) % 32_769) - 16_384,
            ((index * 104_729) % 32_769) - 16_384,
          ];
          hash.update(Uint8Array.from(draw({ time, turn: 2731 * at, index, placeX, placeY })));
        }
      }
    }
  return hash.digest('hex').slice(0, 24);
}
