/** The command line as it is really started: bundled, in a process of its own. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, lanterns } from './run.ts';

const project = process.cwd();

function start(words: readonly string[], folder = project) {
  return spawnSync(process.execPath, [join(project, 'app/cli/start.mjs'), ...words], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, INIT_CWD: undefined, npm_lifecycle_event: undefined },
  });
}

describe('start', () => {
  test('ends with 0, 1 or 2', () => {
    const folder = folderWith('torn.json', '{');
    const sample = join(project, 'samples/ferrymans-hat.piece.json');
    expect(start(['check', sample], folder)).toMatchObject({ status: 0, stderr: '' });
    expect(start(['check', 'torn.json', '--json'], folder)).toMatchObject({ status: 1, stderr: '' });
    expect(start(['check', 'nowhere.json'], folder)).toMatchObject({ status: 2, stdout: '' });
  });

  test('as npm runs it: quiet, and relative to the folder of the caller', () => {
    const folder = folderWith('it.json', lanterns);
    const words = [
      '--prefix',
      project,
      'run',
      '-s',
      'weftlight',
      '--',
      'press',
      'it.json',
      '--script',
      '100 down;400 up;900 end',
    ];
    const { INIT_CWD, npm_lifecycle_event, ...env } = process.env;
    const npm = spawnSync('npm', words, { cwd: folder, encoding: 'utf8', env });
    expect(npm).toMatchObject({ status: 0, stdout: '420 look High tide\n', stderr: '' });
  });

  test('prints long output whole, into a pipe too', () => {
    const { status, stdout } = start(['schema']);
    expect(status).toBe(0);
    expect(stdout.length).toBeGreaterThan(10_000);
    expect(() => JSON.parse(stdout)).not.toThrow();
  });

  test('leaves no bundle behind', () => {
    const { pid, status } = start(['--help']);
    expect(status).toBe(0);
    expect(existsSync(join(project, `node_modules/.cache/weftlight/run-${pid}.mjs`))).toBe(false);
  });
});
