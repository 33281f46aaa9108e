/**
 * What `power` tells of every sample is the mean of what `frames` tells tick by tick, and both are what anybody can
 * reckon from the bytes on the wire and the constants that stand beside them.
 */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Piece } from '../../engine/piece/schema.ts';
import { jsonOf, run } from '../cli/run.ts';
import { sampleScore } from '../codegen/scores.ts';

interface FramesAnswer {
  readonly pixels: number;
  readonly channels: number;
  readonly constants: {
    readonly chipMilliamps: number;
    readonly quiescentMilliamps: number;
    readonly channelMilliamps: readonly number[];
    readonly limitMilliamps: number;
  };
  readonly frames: readonly { readonly ms: number; readonly drive: string; readonly milliamps: number }[];
}

/** Frames at every tick of one loop, in calls short enough for a command line. */
async function framesOfLoop(
  file: string,
  piece: Piece,
  look: Piece['looks'][number],
): Promise<FramesAnswer[]> {
  const ticks = Math.ceil(look.lengthMilliseconds / piece.tickMilliseconds);
  const times = Array.from({ length: ticks }, (_, tick) => tick * piece.tickMilliseconds);
  const answers: FramesAnswer[] = [];
  for (let from = 0; from < ticks; from += 500) {
    const at = times.slice(from, from + 500).join(',');
    answers.push(jsonOf(await run(['frames', file, '--look', look.name, '--at', at, '--json'])));
  }
  return answers;
}

/** Rule P1 over the bytes of one frame; no channel of this part differs from another. */
function milliampsOnWire({ pixels, channels, constants }: FramesAnswer, drive: string): number {
  const bytes = [...Buffer.from(drive, 'hex')];
  expect(bytes).toHaveLength(pixels * channels);
  expect(new Set(constants.channelMilliamps).size).toBe(1);
  const light = bytes.reduce((sum, byte) => sum + (byte / 255) * constants.channelMilliamps[0]!, 0);
  return constants.chipMilliamps + pixels * constants.quiescentMilliamps + light;
}

const samples = readdirSync('samples').filter((name) => name.endsWith('.piece.json'));

test('there are samples to try', () => {
  expect(samples.length).toBeGreaterThanOrEqual(3);
});

test.for(samples)(
  'P1 P2 %s: power is the mean of frames, and frames are what the wire says',
  async (name) => {
    const file = `samples/${name}`;
    const { piece } = sampleScore(name);
    const { pieces } = jsonOf(await run(['power', file, '--json']));
    expect(pieces[0].looks.map((look: { name: string }) => look.name)).toEqual(
      piece.looks.map((look) => look.name),
    );
    for (const [index, look] of piece.looks.entries()) {
      const answers = await framesOfLoop(file, piece, look);
      const drawn = answers.flatMap((answer) =>
        answer.frames.map(({ drive, milliamps }) => {
          expect(milliamps).toBeCloseTo(milliampsOnWire(answer, drive), 6);
          expect(milliamps).toBeLessThanOrEqual(answer.constants.limitMilliamps);
          return milliamps;
        }),
      );
      const mean = drawn.reduce((sum, milliamps) => sum + milliamps, 0) / drawn.length;
      const told = pieces[0].looks[index];
      expect(told.averageMilliamps).toBeCloseTo(mean, 6);
      expect(told.peakMilliamps).toBe(Math.max(...drawn));
      const hours = look.lengthMilliseconds / 3_600_000;
      expect(told.energyPerLoopMilliwattHours).toBeCloseTo(mean * piece.supply.volts * hours, 6);
    }
  },
);
