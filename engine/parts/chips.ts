/** Chips by part number, in the order in which they are offered. */
import { atmega328pPins, type ChipPin } from './atmega328p.ts';
import type { Source } from './figure.ts';

export const chipNames = ['atmega328p', 'attiny85', 'samd21', 'rp2040', 'esp32c3', 'host'] as const;
export type ChipName = (typeof chipNames)[number];

export interface Chip {
  readonly title: string;
  /** False: pieces may name the chip, but no sketch is made for it yet (`board-not-ready`). */
  readonly ready: boolean;
  /** Program memory and RAM; null where the chip has none of its own, or no limit matters. */
  readonly flashBytes: number | null;
  readonly ramBytes: number | null;
  readonly clockHertz: number | null;
  /** Lowest and highest supply for that clock. */
  readonly supplyVolts: readonly [min: number, max: number] | null;
  /** What a data pin is sure to reach when it is high, at the supply of the usual boards. */
  readonly logicHighVolts: number | null;
  /** Pins for pixel data and buttons by the board's usual digital numbers; null: not listed, so not checked. */
  readonly pins: readonly ChipPin[] | null;
  /** What the running chip draws, in tenths of a milliamp: what the current model counts as its share. */
  readonly currentTenths: number;
  readonly sources: readonly Source[];
}

export const chips: Record<ChipName, Chip> = {
  atmega328p: {
    title: 'ATmega328P at 16 MHz',
    ready: true,
    flashBytes: 32_768,
    ramBytes: 2048,
    clockHertz: 16_000_000,
    supplyVolts: [4.5, 5.5],
    logicHighVolts: 4.2,
    pins: atmega328pPins,
    currentTenths: 104,
    sources: [
      {
        about: 'flash 32 KB, RAM 2 KB',
        from: 'ATmega328P datasheet, summary of memories',
        verified: 'memory',
      },
      {
        about: 'clock over supply: 10 MHz from 2.7 V, 20 MHz from 4.5 V',
        from: 'ATmega328P datasheet 8271, speed grades',
        verified: 'primary',
      },
      {
        about: 'high level 4.2 V at 20 mA, 5 V, 85 C',
        from: 'ATmega328P datasheet 8271, DC characteristics',
        verified: 'primary',
      },
      {
        about:
          'current 10.4 mA: twice the 5.2 mA that is typical at 8 MHz and 5 V, as it grows with the clock',
        from: 'ATmega328P datasheet 8271, table 29-9; a board adds its regulator and lamps',
        verified: 'computed',
      },
    ],
  },
  attiny85: {
    title: 'ATtiny85 at 8 MHz',
    ready: false,
    flashBytes: 8192,
    ramBytes: 512,
    clockHertz: 8_000_000,
    supplyVolts: [2.7, 5.5],
    logicHighVolts: 4.3,
    pins: null,
    currentTenths: 50,
    sources: [
      {
        about: 'flash 8 KB, RAM 512 B, 10 MHz from 2.7 V',
        from: 'ATtiny85 datasheet 2586',
        verified: 'memory',
      },
      {
        about: 'high level 4.3 V at 10 mA, 5 V',
        from: 'ATtiny85 datasheet 2586; the sheet of the ATtiny44 prints the same',
        verified: 'memory',
      },
      {
        about: 'current 5 mA, typical at 8 MHz and 5 V',
        from: 'automotive ATtiny85 datasheet 7598, table 22-1',
        verified: 'primary',
      },
    ],
  },
  samd21: {
    title: 'ATSAMD21G18 at 48 MHz',
    ready: false,
    flashBytes: 262_144,
    ramBytes: 32_768,
    clockHertz: 48_000_000,
    supplyVolts: [1.62, 3.63],
    logicHighVolts: 2.64,
    pins: null,
    currentTenths: 50,
    sources: [
      { about: 'flash 256 KB, RAM 32 KB', from: 'SAM D21 datasheet, memories', verified: 'memory' },
      { about: 'high level 0.8 of 3.3 V', from: 'SAM D21 datasheet, section 37.9.1', verified: 'primary' },
      {
        about: 'current 5.0 mA: the highest printed for computing at 25 C',
        from: 'SAM D21 datasheet, section 37.7',
        verified: 'primary',
      },
    ],
  },
  rp2040: {
    title: 'RP2040 at 125 MHz',
    ready: false,
    flashBytes: null,
    ramBytes: 270_336,
    clockHertz: 125_000_000,
    supplyVolts: [1.62, 3.63],
    logicHighVolts: 2.62,
    pins: null,
    currentTenths: 300,
    sources: [
      { about: 'RAM 264 KB, no flash on the chip', from: 'RP2040 datasheet, memory', verified: 'primary' },
      { about: 'high level 2.62 V at 3.3 V', from: 'RP2040 datasheet, section 5.2.3', verified: 'primary' },
      {
        about: 'current 30 mA: upper end of 20 to 30 mA; the datasheet gives use cases only',
        from: 'common practice, no source',
        verified: 'memory',
      },
    ],
  },
  esp32c3: {
    title: 'ESP32-C3 at 160 MHz, radio off',
    ready: false,
    flashBytes: 4_194_304,
    ramBytes: 409_600,
    clockHertz: 160_000_000,
    supplyVolts: [3.0, 3.6],
    logicHighVolts: 2.64,
    pins: null,
    currentTenths: 280,
    sources: [
      { about: 'flash 4 MB in the package', from: 'comparison tables', verified: 'secondary' },
      { about: 'RAM 400 KB, 16 KB of it cache', from: 'ESP32-C3 datasheet v1.4', verified: 'primary' },
      {
        about: 'high level 0.8 of 3.3 V',
        from: 'ESP32-C3 datasheet v1.4, tables 11 to 14',
        verified: 'primary',
      },
      {
        about: 'current 28 mA: running with all clocks on, radio off, 160 MHz',
        from: 'ESP32-C3 datasheet v1.4, tables 17 to 19',
        verified: 'primary',
      },
    ],
  },
  host: {
    title: 'this computer',
    ready: true,
    flashBytes: null,
    ramBytes: null,
    clockHertz: null,
    supplyVolts: null,
    logicHighVolts: null,
    pins: null,
    currentTenths: 0,
    sources: [
      { about: 'current 0 mA: it draws nothing from the piece', from: 'definition', verified: 'computed' },
    ],
  },
};
