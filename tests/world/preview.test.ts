/** The preview's compiled JavaScript against the plain evaluation of the graph, on the clips of random pieces. */
import { expect, test } from 'vitest';
import { clipSeconds } from '../../engine/look/clip-time.ts';
import { keyedValue } from '../../engine/look/keyframes.ts';
import type { ScoredClip } from '../../engine/look/score.ts';
import { evaluate } from '../../engine/pattern/evaluate.ts';
import { compileProgram } from '../../engine/pattern/javascript.ts';
import { Chance, generateScore } from '../support/generate-piece.ts';

const firstSeed = 1001;
const pieces = 100;
const momentsEach = 3;
const pixelsEach = 8;

interface ClipMoment {
  readonly time: number;
  readonly turn: number;
  readonly keyed: Int32Array;
}

function clipMoment(chance: Chance, { endless, lengthMilliseconds, program }: ScoredClip): ClipMoment {
  const ms = chance.whole(0, endless ? 0xffffffff : lengthMilliseconds - 1);
  return {
    time: clipSeconds(ms),
    turn: chance.whole(0, 16383),
    keyed: Int32Array.from(program.keyed, (parameter) => keyedValue(parameter, ms)),
  };
}

function meant({ program, zone }: ScoredClip, { time, turn, keyed }: ClipMoment, entry: number): number[] {
  const inputs: Record<string, number> = {
    time,
    turn,
    index: zone.entries[entry]!.index,
    placeX: zone.places[entry * 2]!,
    placeY: zone.places[entry * 2 + 1]!,
  };
  return evaluate(program.levels, {
    input: (name) => inputs[name]!,
    keyed: (slot) => keyed[slot]!,
    gradients: program.gradients,
  });
}

test(`the preview draws what the graph means: ${pieces} pieces, seeds ${firstSeed} and on`, () => {
  let clips = 0;
  for (let seed = firstSeed; seed < firstSeed + pieces; seed++) {
    const score = generateScore(seed);
    const chance = new Chance(seed * 7919);
    for (const clip of score.looks.flatMap((look) => look.clips)) {
      clips += 1;
      const draw = compileProgram(clip.program);
      const indices = Uint16Array.from(clip.zone.entries, ({ index }) => index);
      const levels = new Uint8Array(indices.length * 3);
      for (const moment of chance.list(momentsEach, () => clipMoment(chance, clip))) {
        draw(levels, indices, clip.zone.places, moment.time, moment.turn, moment.keyed);
        for (const entry of chance.list(pixelsEach, () => chance.whole(0, indices.length - 1))) {
          const drawn = [...levels.subarray(entry * 3, entry * 3 + 3)];
          const expected = meant(clip, moment, entry);
          if (drawn.every((level, channel) => level === expected[channel])) continue;
          expect({ seed, pattern: clip.pattern, moment, entry, drawn }).toMatchObject({ drawn: expected });
        }
      }
    }
  }
  expect(clips).toBeGreaterThan(5 * pieces);
});
