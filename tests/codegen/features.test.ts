import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch, type Sketch } from '../../codegen/sketch.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { type FeatureCase, featureCases } from './features.ts';
import { scoreOf } from './scores.ts';

/** Variables of the sketch core of a rehearsal: what an empty sketch has. */
async function coreRamBytes(): Promise<number> {
  const { value } = await buildFirmware('void setup() {}\nvoid loop() {}\n');
  return value!.ramBytes;
}

function sketchOf({ piece }: FeatureCase, chip: 'atmega328p' | 'host'): Sketch {
  const { value, diagnostics } = generateSketch(scoreOf(piece), chip);
  expect(diagnostics).toEqual([]);
  return value!;
}

describe.each(featureCases)('a piece with $title', (feature) => {
  it('S8 prints what it needs and nothing else', () => {
    for (const chip of ['atmega328p', 'host'] as const) {
      // The host knows its names as strings, which is nothing that a pattern should meet.
      const text = sketchOf(feature, chip).text;
      for (const pattern of feature.has) expect(text).toMatch(pattern);
      for (const pattern of feature.lacks) expect(text).not.toMatch(pattern);
    }
  });

  it('S5, S11 builds cleanly for the chip, with the RAM that was counted', async () => {
    const { text, estimate } = sketchOf(feature, 'atmega328p');
    const { value: firmware, diagnostics } = await buildFirmware(text);
    expect(diagnostics).toEqual([]);
    expect(firmware!.ramBytes - (await coreRamBytes())).toBe(estimate!.ramBytes);
    expect(estimate!.flashBytes / firmware!.flashBytes).toBeGreaterThan(0.8);
    expect(estimate!.flashBytes / firmware!.flashBytes).toBeLessThan(1.25);
  });

  it('S5, H1 builds cleanly for the desk and shows what the engine shows', async () => {
    const score = scoreOf(feature.piece);
    const times = [0, 19, 20, 333, 999, 1000, 1730, 1999, 2000, 31_415, 4_294_967_295];
    const { value, diagnostics } = await withHost(
      sketchOf(feature, 'host').text,
      (program) => Promise.all(score.looks.map(({ name }) => program.frames(name, times, 200))),
      { sanitize: true },
    );
    expect(diagnostics).toEqual([]);
    const expected = score.looks.map((_, look) =>
      times.map((ms) => ({ ms, drive: frame(score, stillMoment(look, ms, 200)).drive })),
    );
    expect(value).toEqual(expected);
  });
});
