import { describe, expect, test } from 'vitest';
import { commands } from '../../app/cli/commands/commands.ts';
import { codesOf, folderWith, lanterns, run } from './run.ts';

const names = Object.keys(commands);

describe('usage', () => {
  test('--help tells all commands and ends well', async () => {
    const { exitCode, output, errors } = await run(['--help']);
    expect([exitCode, errors]).toEqual([0, '']);
    for (const name of names) expect(output).toMatch(new RegExp(`^  ${name} +\\S`, 'm'));
  });

  test('no command at all is wrong usage', async () => {
    const { exitCode, output, errors } = await run([]);
    expect([exitCode, output]).toEqual([2, '']);
    expect(errors).toContain('Usage:');
  });

  test.each(names)('%s --help tells its usage', async (name) => {
    const { exitCode, output } = await run([name, '--help']);
    expect(exitCode).toBe(0);
    expect(output).toContain(`${name} ${commands[name]!.usage}`.trimEnd());
    for (const [option] of commands[name]!.options) expect(output).toContain(option);
  });

  test('an unknown command tells the nearest one', async () => {
    const { exitCode, errors } = await run(['skech', 'x']);
    expect(exitCode).toBe(2);
    expect(errors).toContain('There is no command "skech".');
    expect(errors).toContain('Did you mean "sketch"?');
  });
});

describe('wrong words end with 2 and, with --json, as diagnostics', () => {
  test.each([
    [['check'], 'file-missing'],
    [['check', 'nowhere.piece.json'], 'file-unreadable'],
    [['check', '.'], 'file-unreadable'],
    [['check', 'it.json', '--loud'], 'option-wrong'],
    [['schema', 'it.json'], 'file-unexpected'],
    [['patterns', 'it.json'], 'file-unexpected'],
    [['patterns', '--glsl', 'flood/9'], 'unknown-pattern'],
    [['frames', 'it.json', 'it.json', '--look', 'Low tide', '--at', '0'], 'file-unexpected'],
    [['frames', 'it.json', '--at', '0'], 'option-missing'],
    [['frames', 'it.json', '--look', 'Low tide'], 'option-missing'],
    [['frames', 'it.json', '--look', 'Low', '--at', '0'], 'unknown-look'],
    [['frames', 'it.json', '--look', 'Low tide', '--at', '0,x'], 'number-wrong'],
    [['frames', 'it.json', '--look', 'Low tide', '--at', '-1'], 'number-wrong'],
    [['frames', 'it.json', '--look', 'Low tide', '--at=4294967296'], 'number-wrong'],
    [['frames', 'it.json', '--look', 'Low tide', '--at', '0', '--brightness', '256'], 'number-wrong'],
    [['frames', 'it.json', '--look', 'Low tide', '--at', '0', '--board', 'loom'], 'unknown-board'],
    [['press', 'it.json'], 'option-missing'],
    [['press', 'it.json', '--script', '100 down'], 'script-without-end'],
    [['sketch', 'it.json'], 'option-missing'],
    [['sketch', 'it.json', '--out', '.', '--board', 'loom'], 'unknown-board'],
    [['rehearse', 'it.json', '--for', '0'], 'number-wrong'],
    [['rehearse', 'it.json', '--press', '100'], 'number-wrong'],
    [['rehearse', 'it.json', '--board', 'loom'], 'unknown-board'],
  ])('%j: %s', async (words, code) => {
    const folder = folderWith('it.json', lanterns);
    const outcome = await run([...words, '--json'], folder);
    if (words.includes('-1')) {
      // node takes -1 for an option of its own.
      expect([outcome.exitCode, codesOf(outcome)]).toEqual([2, ['option-wrong']]);
    } else {
      expect([outcome.exitCode, codesOf(outcome)]).toEqual([2, [code]]);
    }
  });

  test('a press on a piece without buttons', async () => {
    const folder = folderWith('it.json', { ...lanterns, controls: {} });
    const outcome = await run(['rehearse', 'it.json', '--press', '100:50', '--json'], folder);
    expect([outcome.exitCode, codesOf(outcome)]).toEqual([2, ['no-button']]);
  });

  test('an unknown look tells the looks there are', async () => {
    const folder = folderWith('it.json', lanterns);
    const { exitCode, output, errors } = await run(
      ['frames', 'it.json', '--look', 'High tid', '--at', '0'],
      folder,
    );
    expect([exitCode, output]).toEqual([2, '']);
    expect(errors).toContain('There is no look "High tid" among "Low tide", "High tide".');
    expect(errors).toContain('Did you mean "High tide"?');
  });
});
