/** The program for the desk against the engine, byte for byte, with the sanitizers watching. */
import { describe, expect, it } from 'vitest';
import { withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { parseScript, press, printEvents } from '../../engine/controls/press.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { sampleFiles, sampleScore } from './scores.ts';

const hex = (drive: Uint8Array) => Buffer.from(drive).toString('hex');

describe.each(sampleFiles)('%s on the desk', (file) => {
  const score = sampleScore(file);
  const { text } = generateSketch(score, 'host').value!;

  it('H1 shows the frames of the engine, in every look, at every brightness', async () => {
    const { value, diagnostics } = await withHost(
      text,
      async (program) => {
        let compared = 0;
        for (const [index, look] of score.looks.entries()) {
          for (const brightness of [0, 1, 64, 127, 128, 255]) {
            const times = Array.from({ length: 24 }, (_, i) => i * 997 + (i % 3) * look.lengthMilliseconds);
            for (const { ms, drive } of await program.frames(look.name, times, brightness)) {
              expect(hex(drive), `${look.name} at ${ms} ms, brightness ${brightness}`).toBe(
                hex(frame(score, stillMoment(index, ms, brightness)).drive),
              );
              compared++;
            }
          }
        }
        return compared;
      },
      { sanitize: true },
    );
    expect(diagnostics).toEqual([]);
    expect(value).toBe(score.looks.length * 6 * 24);
  });

  it('H2 plays a script as the engine does', async () => {
    const script = '100 down\n150 up\n900 down\n2000 up\n2500 down\n2550 up\n2600 down\n2650 up\n40000 end\n';
    const expected = printEvents(press(score, parseScript(script, score.piece).value!));
    const { value } = await withHost(text, (program) => program.play(script));
    expect(value).toBe(expected);
    expect(value!.split('\n').length).toBeGreaterThan(3);
  });
});
