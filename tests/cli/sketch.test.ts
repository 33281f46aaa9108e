import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { codesOf, folderWith, jsonOf, lanterns, run } from './run.ts';

const sketch = ['sketch', 'it.json', '--out', 'out'];
const inoOf = (folder: string) => join(folder, 'out/two_lanterns/two_lanterns.ino');

describe('sketch', () => {
  test('writes a sketch folder that bears the name of its file', async () => {
    const folder = folderWith('it.json', lanterns);
    const { exitCode, output, errors } = await run(sketch, folder);
    expect([exitCode, output, errors]).toEqual([0, `${inoOf(folder)}\n`, '']);
    expect(readFileSync(inoOf(folder), 'utf8')).toContain('void loop()');
  });

  test('tells pins and estimate, and a command that builds it with avr-g++', async () => {
    const folder = folderWith('it.json', lanterns);
    const told = jsonOf(await run([...sketch, '--json'], folder));
    expect(told).toMatchObject({
      file: inoOf(folder),
      dataPins: [6],
      buttonPins: [2],
      estimate: { flashBytes: expect.any(Number) },
    });
    const [command, ...words] = told.compile;
    execFileSync(command, words, { cwd: '/' });
    expect(
      readFileSync(words[words.indexOf('-o') + 1])
        .subarray(1, 4)
        .toString(),
    ).toBe('ELF');
  });

  test('for this computer it is one C++ file, whose program plays as press does', async () => {
    const folder = folderWith('it.json', lanterns);
    const told = jsonOf(await run([...sketch, '--board', 'host', '--json'], folder));
    expect(told.file).toBe(join(folder, 'out/two_lanterns.cpp'));
    const [command, ...words] = told.compile;
    execFileSync(command, words, { cwd: '/' });
    const program = words[words.indexOf('-o') + 1];
    const steps = ['100 down', '200 up', '900 down', '2000 up', '2500 end'];
    const played = execFileSync(program, ['play'], { input: `${steps.join('\n')}\n`, encoding: 'utf8' });
    expect(played).not.toBe('');
    expect((await run(['press', 'it.json', '--script', steps.join(';')], folder)).output).toBe(played);
    const frames = execFileSync(program, ['frames', 'Low tide', '0', '500'], { encoding: 'utf8' });
    expect(frames).toBe('0 004000004000\n500 000000000000\n');
  });

  test('keeps what a maker wrote into my_code()', async () => {
    const folder = folderWith('it.json', lanterns);
    await run(sketch, folder);
    const mine = '  if (shown.look == 0) digitalWrite(13, HIGH);\n';
    const text = readFileSync(inoOf(folder), 'utf8');
    const marked = text.replace(/(\/\/ >>> my code\n)/, `$1${mine}`);
    expect(marked).not.toBe(text);
    writeFileSync(inoOf(folder), marked);
    expect((await run(sketch, folder)).exitCode).toBe(0);
    expect(readFileSync(inoOf(folder), 'utf8')).toContain(mine);
    expect(existsSync(`${inoOf(folder)}.old`)).toBe(false);
  });

  test('sets a file without that place aside rather than writing over it', async () => {
    const folder = folderWith('it.json', lanterns);
    await run(sketch, folder);
    writeFileSync(inoOf(folder), '// all my own\n');
    const { exitCode, errors } = await run(sketch, folder);
    expect(exitCode).toBe(0);
    expect(errors).toContain('my-code-not-found');
    expect(readFileSync(`${inoOf(folder)}.old`, 'utf8')).toBe('// all my own\n');
  });

  test('the same piece gives the same bytes', async () => {
    const folder = folderWith('it.json', lanterns);
    await run(sketch, folder);
    const first = readFileSync(inoOf(folder));
    await run(sketch, folder);
    expect(readFileSync(inoOf(folder)).equals(first)).toBe(true);
  });

  test.each(['sketch', 'rehearse'])('%s for a board that is not built yet ends with 1', async (command) => {
    const folder = folderWith('it.json', lanterns);
    const words = command === 'sketch' ? sketch : ['rehearse', 'it.json'];
    const outcome = await run([...words, '--board', 'rp2040', '--json'], folder);
    expect([outcome.exitCode, codesOf(outcome)]).toEqual([1, ['board-not-ready']]);
  });

  test('a folder that cannot be written is wrong usage', async () => {
    const folder = folderWith('it.json', lanterns);
    const outcome = await run(['sketch', 'it.json', '--out', 'it.json', '--json'], folder);
    expect([outcome.exitCode, codesOf(outcome)]).toEqual([2, ['file-unwritable']]);
  });
});
