/** Figures of chips against the headers that the chip's compiler brings, and against each other. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chipNames, chips } from '../../engine/parts/chips.ts';
import { pixelParts } from '../../engine/parts/pixels.ts';

describe('ATmega328P', () => {
  /** avr-libc's header for the part, made from the chip maker's own description. */
  const path = '/usr/lib/avr/include/avr/iom328p.h';
  const defined = (name: string) => {
    const match = new RegExp(`#define ${name}\\s+\\(?(0x[0-9A-Fa-f]+|[0-9]+)\\)?`).exec(
      readFileSync(path, 'utf8'),
    );
    return Number(match![1]);
  };
  const { atmega328p } = chips;

  test.skipIf(!existsSync(path))('memories are those of the header', () => {
    expect(atmega328p.flashBytes).toBe(defined('FLASHEND') + 1);
    expect(atmega328p.ramBytes).toBe(defined('RAMEND') + 1 - defined('RAMSTART'));
  });

  test.skipIf(!existsSync(path))('every pin is a bit of a port that the header knows', () => {
    for (const { port, bit } of atmega328p.pins!) expect(defined(`PORT${port}${bit}`)).toBe(bit);
  });

  test('pins are numbered 0 to 19 in order, each bit once', () => {
    const pins = atmega328p.pins!;
    expect(pins.map(({ number }) => number)).toEqual(Array.from({ length: 20 }, (_, i) => i));
    expect(new Set(pins.map(({ port, bit }) => `${port}${bit}`)).size).toBe(20);
  });

  // Common practice on boards with this chip, no source: as printed next to the pins.
  test.each([
    [0, 'D', 0],
    [2, 'D', 2],
    [6, 'D', 6],
    [7, 'D', 7],
    [8, 'B', 0],
    [13, 'B', 5],
    [14, 'C', 0],
    [19, 'C', 5],
  ])('pin %i is P%s%i', (number, port, bit) => {
    expect(atmega328p.pins![number]).toMatchObject({ number, port, bit });
  });

  test('draws about twice of what its datasheet prints as typical for half the clock (5.2 mA, table 29-9)', () => {
    expect(atmega328p.currentTenths).toBe(2 * 52);
  });

  test('drives the data line of 5 V pixels high enough', () => {
    expect(atmega328p.logicHighVolts!).toBeGreaterThan(pixelParts.ws2812b.logicHighShare * 5);
  });
});

test('only what has a driver is ready', () => {
  expect(chipNames.filter((name) => chips[name].ready)).toEqual(['atmega328p', 'host']);
});

test('chips of 3.3 V are known not to reach the data level of 5 V pixels', () => {
  for (const name of ['samd21', 'rp2040', 'esp32c3'] as const) {
    expect(chips[name].logicHighVolts!, name).toBeLessThan(pixelParts.ws2812b.logicHighShare * 5);
  }
});

test.each(chipNames)('%s: currents are whole tenths, figures have sources', (name) => {
  const { currentTenths, sources } = chips[name];
  expect(Number.isInteger(currentTenths) && currentTenths >= 0).toBe(true);
  expect(sources.some(({ about }) => about.startsWith('current'))).toBe(true);
  for (const { about, from } of sources) {
    expect(about).not.toBe('');
    expect(from).not.toBe('');
  }
});
