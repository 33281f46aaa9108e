/** A maker edits, or picks the wrong board: the compiler answers in plain words. */
import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { lookOf, puntLantern, scoreOf } from './scores.ts';

const score = scoreOf(
  puntLantern({
    looks: [lookOf('Glow', [{}]), lookOf('Ember', [{}])],
    controls: { buttons: [{ name: 'knob', pin: 2, press: { do: 'next-look' }, hold: { do: 'blackout' } }] },
    output: { balance: [256, 230, 180] },
    supply: { keepAliveMilliamps: 60 },
  }),
);
const { text } = generateSketch(score, 'atmega328p').value!;

function edited(from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

describe('S10 a wrong edit', () => {
  it.each([
    ['START_BRIGHTNESS = 64', 'START_BRIGHTNESS = 300', 'START_BRIGHTNESS goes from 0 (dark) to 255 (full).'],
    ['START_LOOK = 0', 'START_LOOK = 2', 'START_LOOK is the number of one of the looks, from 0.'],
    ['LIMIT_MILLIAMPS = 400', 'LIMIT_MILLIAMPS = 0', 'LIMIT_MILLIAMPS goes from 1 to 20000.'],
    ['KEEP_ALIVE_MILLIAMPS = 60', 'KEEP_ALIVE_MILLIAMPS = 201', 'at most half of LIMIT_MILLIAMPS'],
    ['TICK_MS = 20', 'TICK_MS = 2', 'TICK_MS goes from 5 to 1000.'],
    ['DEBOUNCE_MS = 20', 'DEBOUNCE_MS = 0', 'DEBOUNCE_MS goes from 1 to 250.'],
    ['HOLD_MS = 600', 'HOLD_MS = 0', 'HOLD_MS and DOUBLE_MS are at least 1.'],
    ['CAUGHT_MS = 8000', 'CAUGHT_MS = 61000', 'CAUGHT_MS is at most 60000.'],
    ['RED_BALANCE = 256', 'RED_BALANCE = 257', 'A balance goes from 0 to 256.'],
    ['PIXEL_PIN = 6', 'PIXEL_PIN = 20', 'PIXEL_PIN must be a pin from 0 to 19'],
  ])('%s -> %s', async (from, to, sentence) => {
    const { value, diagnostics } = await buildFirmware(edited(from, to));
    expect(value).toBeUndefined();
    expect(diagnostics[0]!.message).toContain(sentence);
  });

  it('the wrong machine', async () => {
    const { diagnostics } = await withHost(text, async () => {});
    expect(diagnostics[0]!.message).toContain('This sketch is made for an ATmega328P.');
  });
});

describe('S10 a right edit', () => {
  it.each([
    ['START_BRIGHTNESS = 64', 'START_BRIGHTNESS = 255'],
    ['PIXEL_PIN = 6', 'PIXEL_PIN = 11'],
    ['LIMIT_MILLIAMPS = 400', 'LIMIT_MILLIAMPS = 1500'],
    ['{2, DO_NEXT_LOOK, DO_BLACKOUT, DO_NOTHING}', '{7, DO_BLACKOUT, DO_NEXT_LOOK, DO_NOTHING}'],
    ['{clip_still_all, 0, 2000, 255}', '{clip_still_all, 100, 700, 90}'],
    ['  // <<< my code', '  if (shown.look == look_ember) enter_look(look_glow);\n  // <<< my code'],
  ])('%s -> %s builds', async (from, to) => {
    expect((await buildFirmware(edited(from, to))).diagnostics).toEqual([]);
  });
});
