/** Generated sketches on the emulated chip. */
import { describe, expect, it } from 'vitest';
import type { Press } from '../../codegen/rehearse/bounce.ts';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { checkClock } from '../../codegen/rehearse/clock.ts';
import { compareFrames } from '../../codegen/rehearse/compare.ts';
import { rehearse } from '../../codegen/rehearse/rehearse.ts';
import { type RehearsalReport, rehearsalFaults } from '../../codegen/rehearse/report.ts';
import { liveSymbol, shownBytes } from '../../codegen/rehearse/shown.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { frame } from '../../engine/look/frame.ts';
import type { Score } from '../../engine/look/score.ts';
import { expectTrace, sevenAndThree } from './presses.ts';
import { quay } from './quay.ts';
import { runInSimavr } from './simavr.ts';

async function report(score: Score, options: Parameters<typeof rehearse>[1]): Promise<RehearsalReport> {
  const { value, diagnostics } = await rehearse(score, options);
  expect(diagnostics).toEqual([]);
  return value!;
}

describe('a rehearsal', () => {
  it.each([30, 180])('%i pixels, 10 s: every frame as the engine draws it, in time', async (pixels) => {
    const rehearsed = await report(quay(pixels), {
      presses: [{ atMilliseconds: 5_000, lengthMilliseconds: 60 }],
    });
    expect(rehearsalFaults(rehearsed)).toEqual([]);
    expect(rehearsed.mismatches).toBe(0);
    expect(rehearsed.pulsesOutside).toBe(0);
    expect(rehearsed.frames).toBeGreaterThanOrEqual(100);
    expect(rehearsed.clockErrorPercent).toBeLessThanOrEqual(0.5);
    expect(rehearsed.looks.map(({ name }) => name)).toEqual(['Dusk', 'Dawn']);
    expect(rehearsed.pulses).toEqual({
      t0h: [312.5, 312.5],
      t0l: [937.5, 937.5],
      t1h: [875, 875],
      t1l: [375, 375],
    });
    expect(rehearsed.stackBytes).toBeGreaterThan(0);
    expect(rehearsed.freeRamBytes).toBe(2048 - rehearsed.ramBytes - rehearsed.stackBytes);
  });

  it('begins with any look', async () => {
    const rehearsed = await report(quay(30), { startLook: 1, forMilliseconds: 300 });
    expect(rehearsed.looks.map(({ name }) => name)).toEqual(['Dawn']);
    expect(rehearsalFaults(rehearsed)).toEqual([]);
  });

  it('sees in the sketch when a setting changed, not only when a frame shows it', async () => {
    const { text } = generateSketch(quay(8), 'atmega328p').value!;
    const { value: firmware } = await buildFirmware(text);
    expect(firmware!.symbols.get(liveSymbol)?.size).toBe(shownBytes);
  });

  it('has no emulator for the desk, and no sketch for chips that are not built yet', async () => {
    const codes = async (board: 'host' | 'rp2040') =>
      (await rehearse(quay(8), { board })).diagnostics.map(({ code }) => code);
    expect(await codes('host')).toEqual(['no-emulator']);
    expect(await codes('rp2040')).toEqual(['board-not-ready']);
  });
});

describe('in simavr', () => {
  it('every frame of a generated sketch is as the engine draws it, and in time, too', async () => {
    const score = quay(60);
    const { value: firmware } = await buildFirmware(generateSketch(score, 'atmega328p').value!.text);
    const recording = await runInSimavr(firmware!, score.piece.lines[0]!.pin, 3_000);
    expect(recording.frames.length).toBeGreaterThanOrEqual(100);
    expect(recording.outside).toEqual([]);
    expect(compareFrames(recording.frames, (moment) => frame(score, moment).drive)).toEqual([]);
    expect(checkClock(recording).clockErrorPercent).toBeLessThanOrEqual(0.5);
  });
});

describe('a press of 40 ms', () => {
  it('counts wherever it falls, although sending 480 pixels makes the chip blind for 14.4 ms', async () => {
    const looks = ['Dusk', 'Dawn'].map((name) => ({ ...quay(8).piece.looks[0]!, name }));
    const score = quay(480, { looks });
    const presses = Array.from({ length: 20 }, (_, i) => ({
      atMilliseconds: 300 + i * 117.7,
      lengthMilliseconds: 40,
    }));
    const rehearsed = await report(score, { presses, forMilliseconds: 3_000 });
    expect(rehearsed.mismatches).toBe(0);
    expect(rehearsed.trace.map(({ value }) => value)).toEqual(
      presses.map((_, i) => (i % 2 === 0 ? 'Dawn' : 'Dusk')),
    );
  });
});

describe('the trace', () => {
  const pocket: Press[] = [
    { atMilliseconds: 8_200, lengthMilliseconds: 60, button: 1 },
    { atMilliseconds: 8_600, lengthMilliseconds: 60, button: 1 },
    { atMilliseconds: 8_900, lengthMilliseconds: 650, button: 1 },
  ];

  it.each([1, 2, 3])(
    'of bounced presses and holds is that of "press" (bounce seed %i)',
    async (bounceSeed) => {
      const score = quay(60);
      const presses = [...sevenAndThree, ...pocket];
      const rehearsed = await report(score, { presses, bounceSeed });
      expect(rehearsed.trace.length).toBe(presses.length);
      expectTrace(rehearsed, score, presses);
    },
  );
});
