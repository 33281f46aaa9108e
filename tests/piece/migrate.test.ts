/** Versions of the piece file: numbered from 1 without gaps, and brought up to date step by step. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadPiece } from '../../engine/piece/load.ts';
import {
  type MigrationStep,
  migrate,
  migrationSteps,
  newestVersion,
  numbered,
} from '../../engine/piece/migrate.ts';
import { pieceSchema } from '../../engine/piece/schema.ts';
import { stageWith } from './stage.ts';

/** Steps as a later version may bring them: a field renamed, then a list wrapped. */
const steps: readonly MigrationStep[] = numbered([
  { from: 1, migrate: ({ title, ...rest }) => ({ ...rest, name: title }) },
  { from: 2, migrate: ({ name, ...rest }) => ({ ...rest, names: [name] }) },
]);

test('the newest version is the one that the schema describes', () => {
  expect(pieceSchema.shape.version.value).toBe(newestVersion);
  expect(migrationSteps).toHaveLength(newestVersion - 1);
});

describe('steps', () => {
  test('run from the version of the file on, each once', () => {
    expect(migrate({ version: 1, title: 'Steg' }, steps).value).toEqual({ version: 3, names: ['Steg'] });
    expect(migrate({ version: 2, name: 'Steg' }, steps).value).toEqual({ version: 3, names: ['Steg'] });
    expect(migrate({ version: 3, names: ['Steg'] }, steps).value).toEqual({ version: 3, names: ['Steg'] });
  });

  test('leave what they are given as it is', () => {
    const file = Object.freeze({ version: 1, title: 'Steg' });
    migrate(file, steps);
    expect(file).toEqual({ version: 1, title: 'Steg' });
  });

  test.each([
    ['a gap', [1, 3]],
    ['a step twice', [1, 1]],
    ['a version 0', [0, 1]],
    ['the wrong order', [2, 1]],
  ])('with %s are a slip of ours and stop the program', (_, versions) => {
    const unnumbered = versions.map((from) => ({ from, migrate: (data: object) => ({ ...data }) }));
    expect(() => numbered(unnumbered)).toThrow(RangeError);
  });
});

describe('files of older versions', () => {
  const folder = 'tests/piece/versions';
  const textOf = (version: number) => readFileSync(`${folder}/${version}.piece.json`, 'utf8');

  test('are kept, one of each', () => {
    const older = Array.from({ length: newestVersion - 1 }, (_, i) => `${i + 1}.piece.json`);
    expect(readdirSync(folder).sort()).toEqual(older);
  });

  test('of version 1 open as the piece that they always were', () => {
    const { value, diagnostics } = loadPiece(textOf(1));
    const now = loadPiece(readFileSync('samples/ferrymans-hat.piece.json', 'utf8'));
    expect(diagnostics).toEqual([]);
    expect(JSON.parse(textOf(1)).version).toBe(1);
    expect(value).toEqual(now.value);
  });
});

describe('a file', () => {
  const refusals: readonly [version: unknown, code: string, message: RegExp][] = [
    [0, 'version-unknown', /no such version/],
    [-1, 'version-unknown', /no such version/],
    [1.5, 'version-unknown', /no such version/],
    ['1', 'version-unknown', /no such version/],
    [null, 'version-unknown', /no such version/],
    [undefined, 'missing', /"version" is missing/],
    [3, 'version-newer', /has version 3, but this Weftlight reads versions up to 2/],
    [1e9, 'version-newer', /has version 1000000000/],
  ];
  test.each(refusals)('of version %s is refused', (version, code, message) => {
    const { value, diagnostics } = loadPiece(JSON.stringify(stageWith({ version })));
    expect(value).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({ code, path: 'version' });
    expect(diagnostics[0]?.message).toMatch(message);
  });

  test('with a slip in the word is told the word', () => {
    const { diagnostics } = loadPiece(JSON.stringify(stageWith({ version: undefined, versoin: 1 })));
    expect(diagnostics[0]?.advice).toBe('Write "version" in place of "versoin".');
  });
});
