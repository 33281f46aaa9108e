/** The command line in this process, with its output caught. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { dispatch } from '../../app/cli/dispatch.ts';

export interface Outcome {
  readonly exitCode: number;
  readonly output: string;
  readonly errors: string;
}

/** Runs a command in a folder, the project's by default. */
export async function run(words: readonly string[], folder: string = process.cwd()): Promise<Outcome> {
  let output = '';
  let errors = '';
  const exitCode = await dispatch(words, {
    folder,
    print: (text) => {
      output += text;
    },
    complain: (text) => {
      errors += text;
    },
  });
  return { exitCode, output, errors };
}

/** The one JSON value that a command printed; fails if there is anything else. */
export function jsonOf({ output, errors }: Outcome): ReturnType<typeof JSON.parse> {
  if (errors !== '') throw new Error(`standard error has "${errors}"`);
  return JSON.parse(output);
}

export function codesOf(outcome: Outcome): string[] {
  return jsonOf(outcome).diagnostics.map(({ code }: { code: string }) => code);
}

/** A folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'weftlight-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A piece file in a folder of its own; tells the folder. */
export function folderWith(fileName: string, content: unknown): string {
  const folder = temporaryFolder();
  const text = typeof content === 'string' ? content : JSON.stringify(content, null, 2);
  writeFileSync(join(folder, fileName), text);
  return folder;
}

/** Two lanterns, two looks, one button: small enough to reckon by hand. */
export const lanterns = {
  version: 2,
  name: 'Two lanterns',
  board: 'atmega328p',
  lines: [
    {
      pin: 6,
      part: 'ws2812b',
      runs: [{ name: 'pole', flat: { kind: 'straight', count: 2, start: [0, 0], pitchMillimetres: 50 } }],
    },
  ],
  looks: [
    {
      name: 'Low tide',
      lengthMilliseconds: 1000,
      tracks: [{ clips: [{ pattern: 'still/1', lengthMilliseconds: 500, parameters: { tint: '#ff0000' } }] }],
    },
    { name: 'High tide', lengthMilliseconds: 1000, tracks: [] },
  ],
  controls: { buttons: [{ name: 'brooch', pin: 2, press: { do: 'next-look' }, hold: { do: 'blackout' } }] },
};
