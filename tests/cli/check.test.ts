import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { codesOf, folderWith, jsonOf, lanterns, run } from './run.ts';

describe('check', () => {
  test('every sample is fine', async () => {
    const files = readdirSync('samples').map((file) => `samples/${file}`);
    expect(files.length).toBeGreaterThan(0);
    const outcome = await run(['check', ...files, '--json']);
    expect(outcome.exitCode).toBe(0);
    expect(jsonOf(outcome)).toEqual({ diagnostics: [] });
    expect((await run(['check', ...files])).output).toBe(files.map((file) => `${file}: fine\n`).join(''));
  });

  test('tells all faults of a file with their places, and ends with 1', async () => {
    const [first, second] = lanterns.looks;
    const bad = { ...lanterns, board: 'loom', looks: [first, { ...second, lengthMilliseconds: 3 }] };
    const folder = folderWith('bad.piece.json', bad);
    const { exitCode, output } = await run(['check', 'bad.piece.json'], folder);
    expect(exitCode).toBe(1);
    expect(output).toMatch(/^bad\.piece\.json: 2 errors\n/);
    expect(output).toMatch(/at bad\.piece\.json:\d+:\d+ board\n/);
    expect(output).toMatch(/at bad\.piece\.json:\d+:\d+ looks\[1\]\.lengthMilliseconds\n/);
  });

  test('tells what is wrong in a pattern by line and column of its source', async () => {
    const source = 'lowp vec3 light() {\n  return along;\n}\n';
    const folder = folderWith('own.json', { ...lanterns, patterns: [{ name: 'own', source }] });
    const { exitCode, output } = await run(['check', 'own.json'], folder);
    expect(exitCode).toBe(1);
    expect(output).toMatch(/patterns\[0\]\.source \(line 2, column \d+ of the pattern\)/);
  });

  test('a file that is no JSON tells where', async () => {
    const folder = folderWith('torn.json', '{ "version": 1,\n  "name": }');
    const outcome = await run(['check', 'torn.json', '--json'], folder);
    expect(outcome.exitCode).toBe(1);
    const [first] = jsonOf(outcome).diagnostics;
    expect(first).toMatchObject({ file: 'torn.json', severity: 'error' });
    expect((first.span ?? first.inFile).line).toBe(2);
  });

  test('looks at every file, also after a bad one', async () => {
    const folder = folderWith('torn.json', '{');
    const { exitCode, output } = await run(
      ['check', 'torn.json', `${process.cwd()}/samples/ferrymans-hat.piece.json`],
      folder,
    );
    expect(exitCode).toBe(1);
    expect(output).toContain('torn.json: 1 error\n');
    expect(output).toMatch(/ferrymans-hat\.piece\.json: fine\n$/);
  });

  test('--board checks the pins of that board', async () => {
    const [line] = lanterns.lines;
    const onHost = { ...lanterns, board: 'host', lines: [{ ...line, pin: 40 }] };
    const folder = folderWith('it.json', onHost);
    expect((await run(['check', 'it.json'], folder)).exitCode).toBe(0);
    const words = ['sketch', 'it.json', '--out', '.', '--json'];
    expect((await run([...words, '--board', 'host'], folder)).exitCode).toBe(0);
    const moved = await run([...words, '--board', 'atmega328p'], folder);
    expect(moved.exitCode).toBe(1);
    expect(jsonOf(moved).diagnostics[0]).toMatchObject({ path: 'lines[0].pin', severity: 'error' });
  });

  test.each(['frames', 'power', 'press', 'sketch', 'rehearse'])(
    '%s of a bad piece tells the same and ends with 1',
    async (command) => {
      const needed: Record<string, string[]> = {
        frames: ['--look', 'Low tide', '--at', '0'],
        press: ['--script', '1 end'],
        sketch: ['--out', '.'],
      };
      const folder = folderWith('bad.json', { ...lanterns, tickMilliseconds: 1 });
      const words = [command, 'bad.json', ...(needed[command] ?? [])];
      const outcome = await run([...words, '--json'], folder);
      expect(outcome.exitCode).toBe(1);
      expect(codesOf(outcome)).toEqual(codesOf(await run(['check', 'bad.json', '--json'], folder)));
      const told = await run(words, folder);
      expect([told.exitCode, told.output]).toEqual([1, '']);
      expect(told.errors).toContain('tickMilliseconds');
    },
  );
});
