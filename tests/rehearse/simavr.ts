/** Runs firmware in simavr (packages simavr, libsimavr-dev, libelf-dev), heard by the same reader of the wire. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Firmware } from '../../codegen/rehearse/build.ts';
import { Recorder, type Recording } from '../../codegen/rehearse/recording.ts';
import { shownBytes, shownSymbol } from '../../codegen/rehearse/shown.ts';
import { runTool } from '../../codegen/rehearse/tool.ts';
import { inTemporaryFolder } from '../../codegen/rehearse/workshop.ts';
import { atmega328pPins } from '../../engine/parts/atmega328p.ts';

const source = fileURLToPath(new URL('simavr.c', import.meta.url));
const hertz = 16_000_000;

/** Cycles of moments are those of the frame's first edge. Throws if simavr is not installed. */
export function runInSimavr(
  firmware: Firmware,
  dataPin: number,
  forMilliseconds: number,
): Promise<Recording> {
  return inTemporaryFolder(async (folder) => {
    const program = join(folder, 'simavr');
    const elf = join(folder, 'sketch.elf');
    await writeFile(elf, firmware.elf);
    await run('gcc', ['-O2', source, '-o', program, '-lsimavr', '-lelf']);
    const { port, bit } = atmega328pPins.find(({ number }) => number === dataPin)!;
    const shown = firmware.symbols.get(shownSymbol)!.address & 0xffff;
    const cycles = (forMilliseconds * hertz) / 1000;
    const output = await run(program, [elf, cycles, port, bit, shown, shownBytes].map(String));
    return record(output, cycles);
  });
}

async function run(command: string, toolArguments: readonly string[]): Promise<string> {
  const { exitCode, output, errors } = await runTool(command, toolArguments);
  if (exitCode !== 0) throw new Error(`${command} ended with ${exitCode}: ${errors}`);
  return output;
}

function record(output: string, cycles: number): Recording {
  let shown = new Uint8Array(shownBytes);
  const recorder = new Recorder(hertz, () => shown);
  for (const line of output.split('\n')) {
    const [first, second] = line.split(' ');
    if (first === 'shown') {
      shown = new Uint8Array(Buffer.from(second!, 'hex'));
    } else if (/^\d+$/.test(first!)) {
      const cycle = Number(first);
      recorder.momentWritten(cycle);
      recorder.pinChanged(cycle, second === '1');
    }
  }
  return recorder.finish(cycles);
}
