/** Printed cases on an emulated ATmega328P: compiled as a sketch is, asked one by one. */
import { avrInstruction, CPU } from 'avr8js';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { chips } from '../../engine/parts/chips.ts';
import { chipProgramText, type PrintedCases } from './patterns-cpp.ts';

export interface ChipQuestion {
  /** Index into the cases the chip was built with. */
  readonly number: number;
  readonly values: readonly number[];
}

export interface AskedChip {
  /** The 32 bits of the result. Throws if the chip does not answer. */
  ask(question: ChipQuestion): number;
  readonly flashBytes: number;
}

/** Far more than any operation takes, calls and all. */
const mostCycles = 200_000;

/** @param cases printed for `atmega328p` */
export async function buildChip(cases: PrintedCases): Promise<AskedChip> {
  const { value: firmware, diagnostics } = await buildFirmware(chipProgramText(cases));
  if (firmware === undefined) throw new Error(diagnostics[0]!.message);
  const { flashBytes, ramBytes } = chips.atmega328p;
  if (firmware.flashBytes > flashBytes!) throw new Error(`${firmware.flashBytes} bytes do not fit the chip`);
  const memory = new Uint8Array(flashBytes!).fill(0xff);
  memory.set(firmware.flash);
  const cpu = new CPU(new Uint16Array(memory.buffer), ramBytes!);
  const at = (symbol: string) => firmware.symbols.get(symbol)!.address & 0xffff;
  const [which, values, result, answered] = ['which', 'values', 'result', 'answered'].map(at) as [
    number,
    number,
    number,
    number,
  ];
  let hasAnswered = false;
  cpu.writeHooks[answered] = (value) => {
    hasAnswered = value === 1;
    return false;
  };
  const runUntilAnswered = () => {
    const end = cpu.cycles + mostCycles;
    hasAnswered = false;
    while (!hasAnswered) {
      if (cpu.cycles > end) throw new Error('the chip does not answer');
      avrInstruction(cpu);
    }
  };
  // The first answer is to a question nobody asked.
  runUntilAnswered();
  return {
    flashBytes: firmware.flashBytes,
    ask(question) {
      cpu.dataView.setUint16(which, question.number, true);
      question.values.forEach((value, i) => {
        cpu.dataView.setInt32(values + 4 * i, value, true);
      });
      runUntilAnswered();
      return cpu.dataView.getInt32(result, true);
    },
  };
}
