import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { readElf } from '../../codegen/rehearse/elf.ts';
import { runTool } from '../../codegen/rehearse/tool.ts';
import { inTemporaryFolder } from '../../codegen/rehearse/workshop.ts';
import { buildFixture, fixtureSketch, runFixture } from './fixture.ts';

describe('building a sketch', () => {
  it('agrees with avr-size and avr-nm about memory and symbols', async () => {
    const firmware = await buildFixture(
      fixtureSketch(60, [
        ['static uint8_t presses;', 'static uint8_t presses = 0, filled[] = {1, 2, 3};'],
        ['shown.look = presses', 'shown.look = presses;\n  shown.brightness = filled[presses % 3]++'],
      ]),
    );
    const [sizes, names] = await inTemporaryFolder(async (folder) => {
      const file = join(folder, 'sketch.elf');
      await writeFile(file, firmware.elf);
      return [(await runTool('avr-size', [file])).output, (await runTool('avr-nm', ['-S', file])).output];
    });
    const [text, data, bss] = sizes.split('\n')[1]!.trim().split(/\s+/).map(Number);
    expect(data).toBeGreaterThan(0);
    expect(firmware.flashBytes).toBe(text! + data!);
    expect(firmware.ramBytes).toBe(data! + bss!);
    const [address, size] = /^(\w+) (\w+) \w shown$/m
      .exec(names)!
      .slice(1)
      .map((hex) => Number.parseInt(hex, 16));
    expect(firmware.symbols.get('shown')).toEqual({ address, size });
    expect(size).toBe(18);
  });

  it('quotes the compiler where it refuses the sketch', async () => {
    const { value, diagnostics } = await buildFirmware('void setup() {}\nvoid loop() { lantern(); }\n');
    expect(value).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({ code: 'sketch-does-not-compile', severity: 'error' });
    expect(diagnostics[0]!.message).toMatch(/sketch\.ino:2:.*lantern/);
  });

  it('refuses what the strict warnings find', async () => {
    const { diagnostics } = await buildFirmware(
      'void setup() {}\nvoid loop() { const uint8_t low = micros(); digitalWrite(3, low); }\n',
    );
    expect(diagnostics[0]!.message).toMatch(/conversion/);
  });

  describe('without a compiler', () => {
    const path = process.env.PATH;
    afterEach(() => {
      process.env.PATH = path;
    });

    it('says what to install', async () => {
      process.env.PATH = '/nowhere';
      const { value, diagnostics } = await buildFirmware(fixtureSketch(8));
      expect(value).toBeUndefined();
      expect(diagnostics.map(({ code }) => code)).toEqual(['compiler-missing']);
      expect(diagnostics[0]!.advice).toMatch(/gcc-avr/);
    });
  });

  it('knows a file that is no ELF file', () => {
    expect(readElf(new TextEncoder().encode('a lantern'))).toBeUndefined();
  });
});

describe('the stack', () => {
  const loop = 'void loop() {\n';
  const hungry = `${loop}  volatile uint8_t hall[300];\n  for (uint16_t i = 0; i < sizeof hall; i++) hall[i] = 1;\n`;

  it('is measured at its deepest', async () => {
    const plain = runFixture(await buildFixture(fixtureSketch(30)), 50).stackBytes;
    const deep = runFixture(await buildFixture(fixtureSketch(30, [[loop, hungry]])), 50).stackBytes;
    expect(plain).toBeGreaterThan(10);
    expect(plain).toBeLessThan(100);
    expect(deep - plain).toBeGreaterThanOrEqual(300);
    expect(deep - plain).toBeLessThan(330);
  });

  it('shows when it grows into the variables', async () => {
    const firmware = await buildFixture(fixtureSketch(600, [[loop, hungry]]));
    const { stackBytes } = runFixture(firmware, 50);
    expect(firmware.ramBytes + stackBytes).toBeGreaterThanOrEqual(2048);
  });
});
