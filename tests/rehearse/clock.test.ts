/** The riskiest promise first: sending stops the chip's clock and blinds it to its button. */
import { describe, expect, it } from 'vitest';
import { checkClock } from '../../codegen/rehearse/clock.ts';
import { compareFrames } from '../../codegen/rehearse/compare.ts';
import { buildFixture, fixtureFrame, fixtureSketch, runFixture } from './fixture.ts';

/** 500 pixels block for 15 ms and are about what fits into the RAM of the chip. */
const pixelCounts = [30, 180, 500];

describe('while frames block the chip', () => {
  it.each(pixelCounts)('%i pixels: keeps time within 0.5 % over 10 s, every frame whole', async (pixels) => {
    const firmware = await buildFixture(fixtureSketch(pixels));
    const recording = runFixture(firmware, 10_000);
    const { clockErrorPercent, clockAheadMilliseconds } = checkClock(recording);
    expect(recording.frames.length).toBeGreaterThan(400);
    expect(recording.outside).toEqual([]);
    expect(compareFrames(recording.frames, (moment) => fixtureFrame(pixels, moment))).toEqual([]);
    expect(clockErrorPercent).toBeLessThanOrEqual(0.5);
    expect(clockErrorPercent).toBeGreaterThan(0);
    expect(Math.max(...clockAheadMilliseconds.map(Math.abs))).toBeLessThan(50);
  });

  it('a clock that is not given back its lost time is caught', async () => {
    const forgetful = fixtureSketch(180, [['lost_us = WIRE_US - seen', 'lost_us = 0']]);
    const { clockErrorPercent } = checkClock(runFixture(await buildFixture(forgetful), 2_000));
    expect(clockErrorPercent).toBeGreaterThan(20);
  });

  it('a clock that is 2 % slow is caught', async () => {
    const slow = fixtureSketch(30, [
      ['while (passed >= 1000) {\n    passed -= 1000', 'while (passed >= 1020) {\n    passed -= 1020'],
    ]);
    const { clockErrorPercent } = checkClock(runFixture(await buildFixture(slow), 5_000));
    expect(clockErrorPercent).toBeGreaterThan(1.8);
    expect(clockErrorPercent).toBeLessThan(2.2);
  });

  it('a look clock that is 2 % slow is caught, though uptime is right', async () => {
    const slow = fixtureSketch(30, [['look_ms++', 'if (uptime_ms % 50 != 0) look_ms++']]);
    const { clockErrorPercent } = checkClock(runFixture(await buildFixture(slow), 5_000));
    expect(clockErrorPercent).toBeGreaterThan(1.8);
    expect(clockErrorPercent).toBeLessThan(2.2);
  });

  it.each(pixelCounts)('%i pixels: counts every bounced press of 40 ms, and nothing else', async (pixels) => {
    const firmware = await buildFixture(fixtureSketch(pixels));
    for (const bounceSeed of [1, 2, 3]) {
      // Not in step with anything: the presses fall everywhere in a frame.
      const presses = Array.from({ length: 24 }, (_, i) => ({
        atMilliseconds: 100 + i * 103.77,
        lengthMilliseconds: 40,
      }));
      const { frames } = runFixture(firmware, 2_700, presses, bounceSeed);
      const counted = frames.map(({ moment }) => moment.look);
      expect(counted.at(-1), `bounce seed ${bounceSeed}`).toBe(presses.length);
      expect(counted.every((count, i) => i === 0 || count - counted[i - 1]! <= 1)).toBe(true);
    }
  });
});
