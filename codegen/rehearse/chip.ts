/** An ATmega328P at 16 MHz in avr8js, with buttons on its pins and an ear on its data pin. */
import {
  AVRIOPort,
  AVRTimer,
  avrInstruction,
  CPU,
  portBConfig,
  portCConfig,
  portDConfig,
  timer0Config,
  timer1Config,
  timer2Config,
} from 'avr8js';
import { atmega328pPins, type ChipPin } from '../../engine/parts/atmega328p.ts';
import { chips } from '../../engine/parts/chips.ts';
import type { ContactChange } from './bounce.ts';
import type { Firmware } from './build.ts';
import { Recorder, type Recording } from './recording.ts';
import {
  liveSymbol,
  readShown,
  type SettingName,
  settingOffsets,
  shownBytes,
  shownSymbol,
  uptimeOffset,
} from './shown.ts';

export interface ChipRun {
  readonly forMilliseconds: number;
  readonly dataPin: number;
  /** By index of the button. A button closes its pin to ground. */
  readonly buttonPins: readonly number[];
  readonly contacts: readonly ContactChange[];
}

export interface ChipRecording extends Recording {
  /** How much of the RAM the stack ever wrote to. */
  readonly stackBytes: number;
  readonly milliseconds: number;
}

const { clockHertz, flashBytes, ramBytes } = chips.atmega328p;
const hertz = clockHertz!;
const firstRamAddress = 0x100;
const ramEnd = firstRamAddress + ramBytes!;

/** Undefined if the program has no global `shown`. */
export function runChip(firmware: Firmware, run: ChipRun): ChipRecording | undefined {
  const shown = firmware.symbols.get(shownSymbol);
  if (shown === undefined || shown.size < shownBytes) return undefined;
  const shownAddress = shown.address & 0xffff;

  const cpu = new CPU(programMemory(firmware.flash), ramBytes!);
  paintRam(cpu.data);
  for (const config of [timer0Config, timer1Config, timer2Config]) new AVRTimer(cpu, config);
  const ports = {
    B: new AVRIOPort(cpu, portBConfig),
    C: new AVRIOPort(cpu, portCConfig),
    D: new AVRIOPort(cpu, portDConfig),
  };

  const momentAt = (address: number) => cpu.data.slice(address, address + shownBytes);
  const recorder = new Recorder(hertz, () => momentAt(shownAddress));
  for (let i = 0; i < 4; i++) {
    cpu.writeHooks[shownAddress + uptimeOffset + i] = () => {
      recorder.momentWritten(cpu.cycles);
    };
  }
  watchSettings();
  listenTo(run.dataPin);
  const buttons = run.buttonPins.map(fitButton);

  const cycleOf = (milliseconds: number) => Math.round((milliseconds * hertz) / 1000);
  for (const contact of run.contacts) {
    if (contact.atMilliseconds >= run.forMilliseconds) break;
    runUntil(cpu, cycleOf(contact.atMilliseconds));
    buttons[contact.button]?.(contact.closed);
  }
  runUntil(cpu, cycleOf(run.forMilliseconds));
  const stackBytes = paintedOver(cpu.data, firstRamAddress + firmware.ramBytes);
  return { ...recorder.finish(cpu.cycles), stackBytes, milliseconds: run.forMilliseconds };

  function watchSettings(): void {
    const live = firmware.symbols.get(liveSymbol);
    if (live?.size !== shownBytes) return;
    const address = live.address & 0xffff;
    for (const [setting, offset] of Object.entries(settingOffsets) as [SettingName, number][]) {
      cpu.writeHooks[address + offset] = (value) => {
        recorder.settingWritten({ uptimeMs: readShown(momentAt(address)).uptimeMs, setting, value });
      };
    }
  }

  function listenTo(pin: number): void {
    const { port, bit } = place(pin);
    const directions = ports[port].portConfig.DDR;
    let wasHigh = false;
    ports[port].addListener((value) => {
      const high = (value & cpu.data[directions]! & (1 << bit)) !== 0;
      if (high !== wasHigh) recorder.pinChanged(cpu.cycles, high);
      wasHigh = high;
    });
  }

  /** Open, the pin is high only if the sketch has turned its pull-up on. */
  function fitButton(pin: number): (closed: boolean) => void {
    const { port: name, bit } = place(pin);
    const port = ports[name];
    let contactClosed = false;
    let high = false;
    const settle = () => {
      const pulledUp = (cpu.data[port.portConfig.PORT]! & (1 << bit)) !== 0;
      const level = pulledUp && !contactClosed;
      if (level !== high) port.setPin(bit, level);
      high = level;
    };
    port.addListener(settle);
    return (closed) => {
      contactClosed = closed;
      settle();
    };
  }
}

function place(pin: number): ChipPin {
  return atmega328pPins.find(({ number }) => number === pin)!;
}

/** Looked up once: called some hundred million times, and a module's export may hide behind a getter. */
const step = avrInstruction;

function runUntil(cpu: CPU, cycle: number): void {
  while (cpu.cycles < cycle) {
    step(cpu);
    cpu.tick();
  }
}

/** Erased flash reads as ones. */
function programMemory(flash: Uint8Array): Uint16Array {
  const memory = new Uint8Array(flashBytes!).fill(0xff);
  memory.set(flash.subarray(0, memory.length));
  return new Uint16Array(memory.buffer);
}

/**
 * RAM wakes up with anything in it. A pattern shows afterwards how far down the stack has come; watching
 * the stack pointer would also see the moments when only one of its two bytes is written.
 */
function paintRam(data: Uint8Array): void {
  for (let address = firstRamAddress; address < ramEnd; address++) data[address] = paint(address);
}

function paintedOver(data: Uint8Array, firstFree: number): number {
  let address = firstFree;
  while (address < ramEnd && data[address] === paint(address)) address++;
  return ramEnd - address;
}

const paint = (address: number) => (address * 167 + 89) & 0xff;
