/** A rehearsal that cannot fail proves nothing: each of these faults is put in by hand, and found. */
import { describe, expect, it } from 'vitest';
import { rehearseText } from '../../codegen/rehearse/rehearse-text.ts';
import { type RehearsalReport, rehearsalFaults } from '../../codegen/rehearse/report.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import type { Score } from '../../engine/look/score.ts';
import { quay } from './quay.ts';

const score = quay(60);

function sketchWith(from: string | RegExp, to: string): string {
  const { text } = generateSketch(score, 'atmega328p').value!;
  const sabotaged = text.replace(from, () => to);
  expect(sabotaged, `nothing to sabotage: ${from}`).not.toBe(text);
  return sabotaged;
}

async function rehearsed(
  text: string,
  forMilliseconds: number,
  against: Score = score,
): Promise<RehearsalReport> {
  const { value, diagnostics } = await rehearseText(against, text, { forMilliseconds });
  expect(diagnostics).toEqual([]);
  return value!;
}

const faultsOf = (report: RehearsalReport) => rehearsalFaults(report).map(({ code }) => code);

describe('what a rehearsal finds', () => {
  it('nothing in the sketch as it is', async () => {
    const { text } = generateSketch(score, 'atmega328p').value!;
    expect(faultsOf(await rehearsed(text, 5_000))).toEqual([]);
  });

  it('two channels swapped', async () => {
    const text = sketchWith('RED_AT = 1', 'RED_AT = 0').replace('GREEN_AT = 0', 'GREEN_AT = 1');
    const report = await rehearsed(text, 500);
    // Only frames that are still dark, at the beginning of the fade, look the same either way.
    expect(report.mismatches).toBeGreaterThan(0.8 * report.frames);
    expect(faultsOf(report)).toEqual(['frame-mismatch']);
  });

  it('one wrong entry in the gamma table of the sketch', async () => {
    const level = 176;
    const entry = score.output.gamma[level]!;
    const report = await rehearsed(sketchWith(new RegExp(`\\b${entry},`), `${entry + 256},`), 1_500);
    expect(report.mismatches).toBeGreaterThan(0);
    expect(report.mismatches).toBeLessThan(report.frames);
  });

  it('one wrong entry in the gamma table of the engine', async () => {
    const gamma = score.output.gamma.slice();
    gamma[176]! -= 256;
    const { text } = generateSketch(score, 'atmega328p').value!;
    const report = await rehearsed(text, 1_500, { ...score, output: { ...score.output, gamma } });
    expect(report.mismatches).toBeGreaterThan(0);
    expect(report.mismatches).toBeLessThan(report.frames);
  });

  it('a 1 of 5 cycles', async () => {
    const report = await rehearsed(sketchWith('"out  %[port], %[level]  ', '"out  %[port], %[low]  '), 500);
    expect(report.pulses.t1h).toBeNull();
    expect(faultsOf(report)).toContain('frame-mismatch');
  });

  it('a 1 of 5 cycles with the right rest, which leaves the bits too short', async () => {
    const waits = /"out {2}%\[port\], %\[level\].*\n(.*\n){5}(?= *"out {2}%\[port\], %\[low\])/;
    const shorter = sketchWith(waits, '"dec  %[bits]\\n\\t" "breq last_bit_%=\\n\\t"\n      ');
    const report = await rehearsed(shorter, 500);
    expect(report.pulsesOutside).toBeGreaterThan(0);
    expect(faultsOf(report)).toContain('pulse-outside');
  });

  it('unit_mul with its arguments swapped', async () => {
    const report = await rehearsed(
      sketchWith('unit_mul(uint8_t a, uint8_t b)', 'unit_mul(uint8_t b, uint8_t a)'),
      1_500,
    );
    expect(report.mismatches).toBeGreaterThan(0);
    expect(faultsOf(report)).toEqual(['frame-mismatch']);
  });

  it('a multiply that rounds', async () => {
    const head = 'static int16_t mul_q14(int16_t a, int16_t b) {';
    const rounding = `${head}
  return (int16_t)(((int32_t)a * b + 8192) >> 14);
}

__attribute__((unused)) ${head.replace('mul_q14', 'mul_q14_as_it_was')}`;
    const report = await rehearsed(sketchWith(head, rounding), 3_000);
    expect(report.mismatches).toBeGreaterThan(0);
    expect(faultsOf(report)).toEqual(['frame-mismatch']);
  });

  it('a clock that is 2 % slow', async () => {
    const slow =
      'static uint8_t steps;\n  if (++steps == 50) {\n    steps = 0;\n    return;\n  }\n  live.uptime_ms++;';
    const report = await rehearsed(sketchWith('live.uptime_ms++;', slow), 6_000);
    expect(report.clockErrorPercent).toBeGreaterThan(1.8);
    expect(report.clockErrorPercent).toBeLessThan(2.2);
    expect(faultsOf(report)).toEqual(['clock-off']);
  });

  it('a sketch that sends nothing, or lost what it has to show', async () => {
    const silent = sketchWith(
      '  send_pixels(0, frame, FRAME_BYTES);',
      '  if (sent_us == 1) send_pixels(0, frame, FRAME_BYTES);',
    );
    expect(faultsOf(await rehearsed(silent, 100))).toContain('no-frames');
    const hidden = generateSketch(score, 'atmega328p').value!.text.replaceAll(/\bshown\b/g, 'moment_kept');
    const { diagnostics } = await rehearseText(score, hidden, { forMilliseconds: 100 });
    expect(diagnostics.map(({ code }) => code)).toEqual(['no-shown']);
  });
});
