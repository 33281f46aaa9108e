/** The samples as sketches for the chip: clean, small enough, and counted right. */
import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { sampleFiles, sampleScore } from './scores.ts';

/** 60 pixels, 5 looks: what it may take of the program memory, sketch core and all. */
const smallSample = { pixels: 60, looks: 5, flashBytes: 12 * 1024 };

describe.each(sampleFiles)('the sketch of %s', (file) => {
  const score = sampleScore(file);
  const sketch = generateSketch(score, 'atmega328p').value!;

  it('S5, S11 builds cleanly, as large as was counted', async () => {
    const { value: firmware, diagnostics } = await buildFirmware(sketch.text);
    const core = (await buildFirmware('void setup() {}\nvoid loop() {}\n')).value!;
    expect(diagnostics).toEqual([]);
    const { ramBytes, flashBytes } = sketch.estimate!;
    expect(firmware!.ramBytes - core.ramBytes).toBe(ramBytes);
    expect(Math.abs(flashBytes / firmware!.flashBytes - 1)).toBeLessThan(0.15);
  });

  it('S2 is the same, byte for byte, when it is made again from the file', () => {
    expect(generateSketch(sampleScore(file), 'atmega328p').value).toEqual(sketch);
    expect(generateSketch(score, 'atmega328p', { previous: sketch.text }).value!.text).toBe(sketch.text);
  });

  it('names its file, its pins and what it takes', () => {
    expect(sketch.fileName).toMatch(/^[a-z][a-z0-9_]*\.ino$/);
    expect(sketch.dataPins).toEqual(score.piece.lines.map(({ pin }) => pin));
    expect(sketch.buttonPins).toEqual(score.piece.controls.buttons.map(({ pin }) => pin));
    expect(sketch.estimate!.looks.map(({ name }) => name)).toEqual(score.looks.map(({ name }) => name));
  });
});

it('the sample of 60 pixels and 5 looks fits into 12 KB', async () => {
  const scores = sampleFiles.map(sampleScore);
  const small = scores.find(
    ({ pixels, looks }) => pixels.length === smallSample.pixels && looks.length === smallSample.looks,
  );
  const { value } = await buildFirmware(generateSketch(small!, 'atmega328p').value!.text);
  expect(value!.flashBytes).toBeLessThanOrEqual(smallSample.flashBytes);
});
