/** Many pieces in one program, and generated pieces on the chip's compiler. */
import { describe, expect, it } from 'vitest';
import { printHostBundle } from '../../codegen/host-bundle.ts';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { press, printEvents } from '../../engine/controls/press.ts';
import { frame } from '../../engine/look/frame.ts';
import { Chance, generateMoment, generateScore } from '../support/generate-piece.ts';

const hex = (drive: Uint8Array) => Buffer.from(drive).toString('hex');

describe('a bundle', () => {
  const seeds = [1, 2, 3, 4, 5, 6];
  const scores = seeds.map(generateScore);

  it('answers for each of its pieces (seeds 1 to 6)', async () => {
    const chance = new Chance(99);
    const scenes = scores.flatMap((score, piece) =>
      Array.from({ length: 30 }, () => ({ piece, moment: generateMoment(chance, score) })),
    );
    const lines = scenes.map(({ piece, moment: { look, ms, brightness, blackout, leaving } }) =>
      [
        piece,
        look,
        ms,
        brightness,
        Number(blackout),
        ...(leaving === null ? [255, 0, 0] : [leaving.look, leaving.ms, leaving.mix]),
      ].join(' '),
    );
    const { value, diagnostics } = await withHost(
      printHostBundle(scores),
      async (program) => {
        const drives = await program.run(['moments'], `${lines.join('\n')}\n`);
        const script = { contacts: [{ ms: 100, button: 0, down: true }], endMs: 20_000 };
        for (const [piece, score] of scores.entries()) {
          const played = await program.run([String(piece), 'play'], '100 down\n20000 end\n');
          expect(played).toBe(printEvents(press(score, script)));
        }
        return drives;
      },
      { sanitize: true },
    );
    expect(diagnostics).toEqual([]);
    expect(value!.trimEnd().split('\n')).toEqual(
      scenes.map(({ piece, moment }) => hex(frame(scores[piece]!, moment).drive)),
    );
  });
});

describe('S5 generated pieces build cleanly for the chip', () => {
  const seeds = Array.from({ length: 25 }, (_, i) => 500 + i);

  it.each(seeds)('seed %i', async (seed) => {
    const { value, diagnostics } = generateSketch(generateScore(seed), 'atmega328p', { power: [] });
    if (value === undefined) {
      expect(diagnostics[0]!.code).toMatch(/^too-little-/);
      return;
    }
    const { value: firmware, diagnostics: found } = await buildFirmware(value.text);
    // A sketch may turn out too large for the chip; the linker then says so, and nothing else is wrong.
    if (firmware === undefined) expect(found[0]!.message).toMatch(/will not fit|overflowed|region/);
    else expect(firmware.flashBytes).toBeGreaterThan(2000);
  });

  it('and most of them fit', () => {
    const fitting = seeds.filter(
      (seed) => generateSketch(generateScore(seed), 'atmega328p', { power: [] }).value !== undefined,
    );
    expect(fitting.length).toBeGreaterThan(seeds.length / 2);
  });
});
