/** Runs compilers and compiled programs as child processes, without a shell. */
import { spawn } from 'node:child_process';

export interface ToolRun {
  /** Null if the program was not found or could not be started. */
  readonly exitCode: number | null;
  readonly output: string;
  readonly errors: string;
}

export interface ToolOptions {
  /** Text for the program's standard input. */
  readonly input?: string;
  /** The program is ended after this long; its exit code is then null. */
  readonly timeoutMilliseconds?: number;
}

export function runTool(
  command: string,
  toolArguments: readonly string[],
  options: ToolOptions = {},
): Promise<ToolRun> {
  return new Promise((resolve) => {
    const child = spawn(command, toolArguments, { timeout: options.timeoutMilliseconds, shell: false });
    const output: Buffer[] = [];
    const errors: Buffer[] = [];
    const finish = (exitCode: number | null) => {
      const text = (chunks: Buffer[]) => Buffer.concat(chunks).toString('utf8');
      resolve({ exitCode, output: text(output), errors: text(errors) });
    };
    child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => errors.push(chunk));
    child.on('error', () => finish(null));
    child.on('close', (exitCode) => finish(exitCode));
    // A program may end before it has read everything; its exit code tells enough.
    child.stdin.on('error', () => {});
    child.stdin.end(options.input ?? '');
  });
}
