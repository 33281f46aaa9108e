/** The small hand-written sketch, with the real driver, built and run on the emulated chip. */
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { ws2812bOnAvr } from '../../codegen/drivers/ws2812b-avr.ts';
import { contactChanges, type Press } from '../../codegen/rehearse/bounce.ts';
import { buildFirmware, type Firmware } from '../../codegen/rehearse/build.ts';
import { type ChipRecording, runChip } from '../../codegen/rehearse/chip.ts';

export const fixturePins = { data: 6, button: 2 } as const;

const template = readFileSync(new URL('fixtures/one-button.ino', import.meta.url), 'utf8');

/** `edits`: pairs of what to replace and by what; each must be found. */
export function fixtureSketch(pixels: number, edits: readonly [string, string][] = []): string {
  let text = template;
  for (const [from, to] of [
    ['//driver', ws2812bOnAvr([fixturePins.data]).text] as const,
    ['PIXEL_COUNT = 30', `PIXEL_COUNT = ${pixels}`] as const,
    ...edits,
  ]) {
    expect(text).toContain(from);
    text = text.replace(from, () => to);
  }
  return text;
}

export async function buildFixture(text: string): Promise<Firmware> {
  const { value, diagnostics } = await buildFirmware(text);
  expect(diagnostics).toEqual([]);
  return value!;
}

export function runFixture(
  firmware: Firmware,
  forMilliseconds: number,
  presses: readonly Press[] = [],
  bounceSeed = 1,
): ChipRecording {
  return runChip(firmware, {
    forMilliseconds,
    dataPin: fixturePins.data,
    buttonPins: [fixturePins.button],
    contacts: contactChanges(presses, bounceSeed),
  })!;
}

/** What the sketch puts on the wire: its presses, the low byte of the time, and each pixel's number. */
export function fixtureFrame(pixels: number, moment: { look: number; uptimeMs: number }): Uint8Array {
  const bytes = new Uint8Array(3 * pixels);
  for (let i = 0; i < pixels; i++) bytes.set([moment.look, moment.uptimeMs, i], 3 * i);
  return bytes;
}
