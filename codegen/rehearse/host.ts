/** Builds a sketch for this computer and runs it: the same player with a plain `main`. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Checked, Diagnostic } from '../../engine/diagnostic.ts';
import { strictWarnings } from './build.ts';
import { runTool } from './tool.ts';
import { inTemporaryFolder } from './workshop.ts';

const compiler = 'g++';

export interface HostOptions {
  /** Stop at the first undefined behaviour or stray address. */
  readonly sanitize?: boolean;
  /** `-O1` if left out. */
  readonly optimise?: '-O0' | '-O1' | '-O2' | '-Os';
}

export interface HostFrame {
  readonly ms: number;
  /** In wire order. */
  readonly drive: Uint8Array;
}

/** A built program. It lives only as long as the work that `withHost` does with it. */
export interface HostProgram {
  /** `PROG frames`: the drive at each of these look times, in milliseconds. */
  frames(look: string, milliseconds: readonly number[], brightness?: number): Promise<HostFrame[]>;
  /** `PROG play`: the events for a script of lines `MS down|up [BUTTON]` and `MS end`. */
  play(script: string): Promise<string>;
  /** The program with any arguments; for everything that a test adds to it. */
  run(programArguments: readonly string[], input?: string): Promise<string>;
}

/** Errors: `compiler-missing`, `sketch-does-not-compile`. Throws what `work` throws, and if the program fails. */
export function withHost<T>(
  sketchText: string,
  work: (program: HostProgram) => Promise<T>,
  options: HostOptions = {},
): Promise<Checked<T>> {
  return inTemporaryFolder(async (folder) => {
    const source = join(folder, 'sketch.cpp');
    await writeFile(source, sketchText);
    const program = join(folder, 'sketch');
    const sanitizers = options.sanitize
      ? ['-fsanitize=undefined,address', '-fno-sanitize-recover=all', '-g']
      : [];
    const run = await runTool(compiler, [
      '-std=c++11',
      options.optimise ?? '-O1',
      ...sanitizers,
      ...strictWarnings,
      source,
      '-o',
      program,
    ]);
    if (run.exitCode === null) return { diagnostics: [compilerMissing] };
    if (run.exitCode !== 0) return { diagnostics: [doesNotCompile(run.errors, folder)] };
    return { value: await work(hostProgram(program)), diagnostics: [] };
  });
}

function hostProgram(program: string): HostProgram {
  const run = async (programArguments: readonly string[], input = '') => {
    const { exitCode, output, errors } = await runTool(program, programArguments, { input });
    if (exitCode !== 0) throw new Error(`the program ended with ${exitCode}: ${errors.slice(0, 2000)}`);
    return output;
  };
  return {
    run,
    play: (script) => run(['play'], script),
    frames: async (look, milliseconds, brightness) => {
      const dimmed = brightness === undefined ? [] : ['--brightness', String(brightness)];
      const output = await run(['frames', ...dimmed, look, ...milliseconds.map(String)]);
      return output.trimEnd().split('\n').map(hostFrame);
    },
  };
}

function hostFrame(line: string): HostFrame {
  const [ms, hex = ''] = line.split(' ');
  return { ms: Number(ms), drive: new Uint8Array(Buffer.from(hex, 'hex')) };
}

const compilerMissing: Diagnostic = {
  code: 'compiler-missing',
  severity: 'error',
  message: `The compiler ${compiler} was not found on this computer.`,
  advice: 'Install it with the package g++, then try again.',
};

function doesNotCompile(errors: string, folder: string): Diagnostic {
  return {
    code: 'sketch-does-not-compile',
    severity: 'error',
    message: `The compiler refuses the sketch: ${errors.replaceAll(`${folder}/`, '').trim().slice(0, 400)}`,
    advice: 'Generate the sketch anew, or undo the last edit above the line of the machinery.',
  };
}
