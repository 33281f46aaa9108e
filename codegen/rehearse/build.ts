/** From the text of a sketch to what a chip would be loaded with: avr-g++ and our own sketch core. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Checked, Diagnostic } from '../../engine/diagnostic.ts';
import declarations from './core/declarations.inc.cpp';
import definitions from './core/definitions.inc.cpp';
import { type ElfFile, type ElfSymbol, readElf } from './elf.ts';
import { runTool } from './tool.ts';
import { inTemporaryFolder } from './workshop.ts';

export interface Firmware {
  readonly elf: Uint8Array;
  /** Program memory from address 0. */
  readonly flash: Uint8Array;
  readonly flashBytes: number;
  /** Static variables; the stack comes on top. */
  readonly ramBytes: number;
  readonly symbols: ReadonlyMap<string, ElfSymbol>;
}

const compiler = 'avr-g++';

/** What the sketch promises to be clean under. */
export const strictWarnings = ['-Wall', '-Wextra', '-Wconversion', '-Wshadow', '-Werror'] as const;

const chipFlags = [
  '-Os',
  '-std=gnu++11',
  '-mmcu=atmega328p',
  '-DF_CPU=16000000UL',
  '-ffunction-sections',
  '-fdata-sections',
  '-Wl,--gc-sections',
] as const;

const coreFiles = { header: 'sketch_core.h', source: 'sketch_core.cpp' } as const;

/** Writes the sketch core into a folder, which `compileCommand` then names. */
export async function writeSketchCore(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, coreFiles.header), declarations);
  await writeFile(join(folder, coreFiles.source), `#include "${coreFiles.header}"\n\n${definitions}`);
}

/** The command that builds a sketch, as a list of arguments for any program runner; all paths are the caller's. */
export function compileCommand(sketchFile: string, coreFolder: string, elfFile: string): string[] {
  const header = join(coreFolder, coreFiles.header);
  const source = join(coreFolder, coreFiles.source);
  return [
    compiler,
    ...chipFlags,
    ...strictWarnings,
    '-include',
    header,
    '-x',
    'c++',
    sketchFile,
    source,
    '-o',
    elfFile,
  ];
}

/** Errors: `compiler-missing`, `sketch-does-not-compile`. */
export function buildFirmware(sketchText: string): Promise<Checked<Firmware>> {
  return inTemporaryFolder(async (folder) => {
    const sketchFile = join(folder, 'sketch.ino');
    const elfFile = join(folder, 'sketch.elf');
    await writeSketchCore(folder);
    await writeFile(sketchFile, sketchText);
    const [command, ...toolArguments] = compileCommand(sketchFile, folder, elfFile);
    const run = await runTool(command!, toolArguments);
    if (run.exitCode === null) return { diagnostics: [compilerMissing] };
    if (run.exitCode !== 0) return { diagnostics: [doesNotCompile(run.errors, folder)] };
    const elf = new Uint8Array(await readFile(elfFile));
    return { value: firmwareOf(elf, readElf(elf)!), diagnostics: [] };
  });
}

const compilerMissing: Diagnostic = {
  code: 'compiler-missing',
  severity: 'error',
  message: `The compiler ${compiler} was not found on this computer.`,
  advice: 'Install it with the packages gcc-avr, binutils-avr and avr-libc, then try again.',
};

function doesNotCompile(errors: string, folder: string): Diagnostic {
  const readable = errors.replaceAll(`${folder}/`, '').trim();
  const first = readable.split('\n').find((line) => line.includes('error')) ?? readable;
  return {
    code: 'sketch-does-not-compile',
    severity: 'error',
    message: `The compiler refuses the sketch: ${first.trim()}`,
    advice: 'Generate the sketch anew, or undo the last edit above the line of the machinery.',
  };
}

function firmwareOf(elf: Uint8Array, { segments, sections, symbols }: ElfFile): Firmware {
  const flashEnd = Math.max(...segments.map(({ address, bytes }) => address + bytes.length));
  const flash = new Uint8Array(flashEnd);
  for (const { address, bytes } of segments) flash.set(bytes, address);
  // avr-gcc places RAM from 0x800000 on, so that both memories fit one address space.
  const ramBytes = sections
    .filter(({ allocated, address }) => allocated && address >= ramOrigin)
    .reduce((sum, { size }) => sum + size, 0);
  return { elf, flash, flashBytes: flashEnd, ramBytes, symbols };
}

/** Where avr-gcc's address space puts RAM; a symbol's low 16 bits are the chip's data address. */
const ramOrigin = 0x800000;
