import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, parse, resolve } from 'node:path';
import type { ChipName } from '../../../engine/parts/chips.ts';
import { type FiledDiagnostic, faulty, wrongUsage } from '../failure.ts';
import { filed, open } from '../files.ts';
import { chipNamed, needed, oneFile, readWords } from '../options.ts';
import { diagnosticsText, printJson } from '../tell.ts';
import { type Command, exitCodes, type Terminal } from '../terminal.ts';

export const sketch: Command = {
  usage: 'FILE [--board B] --out DIR [--json]',
  does: 'writes the sketch that plays a piece on its chip',
  options: [
    ['--board B', 'another chip than that of the piece; host makes a program for this computer'],
    ['--out DIR', 'folder for the sketch; what you wrote into my_code() there is kept'],
  ],
  async run(words, terminal) {
    // Only here and in `rehearse`, so that the other commands start without the code generator.
    const { generateSketch } = await import('../../../codegen/sketch.ts');
    const { options, rest } = readWords(words, { board: 'text', out: 'text' });
    const name = oneFile(rest);
    const out = resolve(terminal.folder, needed(options.out, 'out', '--out sketches'));
    const chosen = options.board === undefined ? undefined : chipNamed(options.board);
    const { score, diagnostics: warnings } = await open(name, terminal, chosen);
    const { board } = score.piece;

    const first = generateSketch(score, board);
    if (first.value === undefined) throw faulty(filed(name, first.diagnostics));
    const file = sketchPath(out, board, first.value.fileName);
    const previous = await textOf(file);
    const made = previous === undefined ? first : generateSketch(score, board, { previous });
    if (made.value === undefined) throw faulty(filed(name, made.diagnostics));
    const { text, dataPins, buttonPins, estimate } = made.value;
    const diagnostics = [...warnings, ...filed(name, made.diagnostics)];

    await orExplain(file, async () => {
      await mkdir(dirname(file), { recursive: true });
      if (myCodeIsLost(made.diagnostics)) await copyFile(file, `${file}.old`);
      await writeFile(file, text);
    });
    if (options.json) {
      const compile = await compileArguments(board, file);
      printJson(terminal, { file, dataPins, buttonPins, compile, estimate });
    } else {
      terminal.print(`${file}\n`);
      tellWarnings(terminal, diagnostics);
    }
    return exitCodes.fine;
  },
};

/** A sketch folder bears the name of its file. */
function sketchPath(out: string, board: ChipName, fileName: string): string {
  return board === 'host' ? join(out, fileName) : join(out, parse(fileName).name, fileName);
}

async function textOf(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8');
  } catch {
    return undefined;
  }
}

/** The older file had no place to take the maker's own code from, so it must not simply be overwritten. */
function myCodeIsLost(diagnostics: readonly FiledDiagnostic[]): boolean {
  return diagnostics.some(({ code }) => code === 'my-code-not-found');
}

/** The command that builds the file; for a chip, with the sketch core that it needs beside the sketch's folder. */
async function compileArguments(board: ChipName, file: string): Promise<readonly string[]> {
  const { compileCommand, strictWarnings, writeSketchCore } = await import(
    '../../../codegen/rehearse/build.ts'
  );
  const { dir, name } = parse(file);
  if (board === 'host') return ['g++', '-std=c++11', '-O1', ...strictWarnings, file, '-o', join(dir, name)];
  const out = dirname(dir);
  const core = join(out, 'sketch-core');
  await writeSketchCore(core);
  return compileCommand(file, core, join(out, `${name}.elf`));
}

async function orExplain(file: string, write: () => Promise<void>): Promise<void> {
  try {
    await write();
  } catch (problem) {
    const { code } = problem as NodeJS.ErrnoException;
    throw wrongUsage(
      'file-unwritable',
      `${file} cannot be written (${code}).`,
      'Choose another --out folder.',
    );
  }
}

function tellWarnings(terminal: Terminal, diagnostics: readonly FiledDiagnostic[]): void {
  if (diagnostics.length > 0) terminal.complain(`\n${diagnosticsText(diagnostics)}`);
}
