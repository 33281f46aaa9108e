import { describe, expect, test } from 'vitest';
import { folderWith, jsonOf, lanterns, run } from './run.ts';

const script = '100 down;200 up;1000 down;2000 up;3000 end';

describe('press', () => {
  test('C13 prints one line an event, and nothing else', async () => {
    const folder = folderWith('it.json', lanterns);
    expect(await run(['press', 'it.json', '--script', script], folder)).toEqual({
      exitCode: 0,
      output: '220 look High tide\n1620 blackout on\n',
      errors: '',
    });
  });

  test('C13 prints nothing where nothing changes', async () => {
    const folder = folderWith('it.json', lanterns);
    expect((await run(['press', 'it.json', '--script', '3000 end'], folder)).output).toBe('');
  });

  test('C13 the same as JSON', async () => {
    const folder = folderWith('it.json', lanterns);
    expect(jsonOf(await run(['press', 'it.json', '--script', script, '--json'], folder))).toEqual([
      { ms: 220, kind: 'look', value: 'High tide' },
      { ms: 1620, kind: 'blackout', value: true },
    ]);
  });

  test('C14 tells where a script is wrong', async () => {
    const folder = folderWith('it.json', lanterns);
    const { exitCode, errors } = await run(['press', 'it.json', '--script', '5 down; 9 hop; 9 end'], folder);
    expect(exitCode).toBe(2);
    expect(errors).toContain('error script-step-unreadable at (line 1, column 9)\n  "9 hop" is no step');
  });
});
