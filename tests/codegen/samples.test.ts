/** The samples as sketches for the chip: clean, small enough, and counted right. */
import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { rehearse } from '../../codegen/rehearse/rehearse.ts';
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

/** What usual sketch builders do: announce every function right before the first one. */
function withPrototypes(text: string): string {
  const heads = [...text.matchAll(/^(?!template)((?:static |inline )*\w+ \**\w+\([^;{}]*\)) \{/gm)];
  const first = heads[0]!.index;
  const prototypes = heads.map(([, head]) => `${head};`).join('\n');
  return `${text.slice(0, first)}${prototypes}\n\n${text.slice(first)}`;
}

it.each(sampleFiles)(
  'S1 %s builds after its functions were announced before the first of them',
  async (file) => {
    const { text } = generateSketch(sampleScore(file), 'atmega328p').value!;
    const announced = withPrototypes(text);
    expect(announced.match(/^static bool next_pixel\(Walk &at\);$/gm)).toHaveLength(1);
    expect(announced.match(/^void loop\(\);$/gm)).toHaveLength(1);
    expect((await buildFirmware(announced)).diagnostics).toEqual([]);
  },
);

it('the sample of 60 pixels and 5 looks fits into 12 KB', async () => {
  const scores = sampleFiles.map(sampleScore);
  const small = scores.find(
    ({ pixels, looks }) => pixels.length === smallSample.pixels && looks.length === smallSample.looks,
  );
  const { value } = await buildFirmware(generateSketch(small!, 'atmega328p').value!.text);
  expect(value!.flashBytes).toBeLessThanOrEqual(smallSample.flashBytes);
});

// The count takes every branch of a pattern, the chip only those that a pixel needs: it errs to the slow side.
it('S11 the pace is estimated within a half of what a rehearsal measures', async () => {
  const score = sampleScore('ferrymans-hat.piece.json');
  const { estimate } = generateSketch(score, 'atmega328p').value!;
  // Looks that are at their busiest from the beginning.
  const busyAtOnce = score.looks.flatMap(({ clips }, look) =>
    clips.every(({ startMilliseconds }) => startMilliseconds === 0) ? [look] : [],
  );
  expect(busyAtOnce.length).toBeGreaterThanOrEqual(3);
  for (const startLook of busyAtOnce) {
    const { name, cyclesPerPixel } = estimate!.looks[startLook]!;
    const { value: report } = await rehearse(score, { startLook, forMilliseconds: 400 });
    const measured = report!.looks.find((look) => look.name === name)!.cyclesPerPixel;
    expect(cyclesPerPixel / measured, name).toBeGreaterThan(0.8);
    expect(cyclesPerPixel / measured, name).toBeLessThan(1.5);
  }
});
