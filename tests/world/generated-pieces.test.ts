/**
 * One meaning, two executions: the frames of random pieces, drawn by the engine and by the C++ that a maker
 * would get, byte for byte. A seed stands for a piece and its moments; one that ever failed stays in `pinned`.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { HostOptions } from '../../codegen/rehearse/host.ts';
import { blendNames } from '../../engine/look/blend.ts';
import { easingNames } from '../../engine/look/easing.ts';
import { type Frame, frame } from '../../engine/look/frame.ts';
import type { Moment } from '../../engine/look/moment.ts';
import type { Score } from '../../engine/look/score.ts';
import { libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import { bundleDrives } from '../support/bundle.ts';
import { Chance, generateMoment, generateScore } from '../support/generate-piece.ts';
import { Tally } from './tally.ts';

const pieces = 300;
const momentsEach = 20;
const bundleSize = 50;
/** Each showed a difference once: a step-start at its key, literals of 64 bits, a comparison with itself. */
const pinned = [34, 35, 157];

interface Cast {
  readonly seed: number;
  readonly score: Score;
  readonly moments: readonly Moment[];
}

function castOf(seed: number): Cast {
  const score = generateScore(seed);
  const chance = new Chance(seed * 7919);
  return { seed, score, moments: chance.list(momentsEach, () => generateMoment(chance, score)) };
}

const seeds = Array.from({ length: pieces }, (_, index) => index + 1);
const bundles = Array.from({ length: pieces / bundleSize }, (_, index) =>
  seeds.slice(index * bundleSize, (index + 1) * bundleSize),
);

/** Tells the first frame that differs: which piece, which moment, and from which byte on. */
async function expectSameFrames(bundle: readonly number[], options: HostOptions): Promise<void> {
  const casts = bundle.map(castOf);
  const scenes = casts.flatMap(({ moments }, piece) => moments.map((moment) => ({ piece, moment })));
  const drives = await bundleDrives(
    casts.map(({ score }) => score),
    scenes,
    options,
  );
  expect(drives).toHaveLength(scenes.length);
  for (const [index, { piece, moment }] of scenes.entries()) {
    const { seed, score } = casts[piece]!;
    const engine = Buffer.from(frame(score, moment).drive).toString('hex');
    if (drives[index] === engine) continue;
    expect({ seed, moment, drive: drives[index] }).toEqual({ seed, moment, drive: engine });
  }
}

describe(`T L S5: ${pieces} generated pieces at ${momentsEach} moments each, host and engine`, () => {
  test.for(bundles)('seeds %i and on, byte for byte', (bundle) =>
    expectSameFrames(bundle, { optimise: '-O0' }),
  );

  test(`seeds ${pinned.join(', ')}, which failed before, optimised`, () =>
    expectSameFrames(pinned, { optimise: '-O2' }));

  test(`seeds 1 to ${bundleSize}, stopped at the first undefined behaviour`, () =>
    expectSameFrames(bundles[0]!, { optimise: '-O0', sanitize: true }));
});

describe('what the generated pieces reach', () => {
  const tally = new Tally();
  let frames = 0;
  let colourful = 0;
  let limited = 0;
  let lifted = 0;

  beforeAll(() => {
    for (const { seed, score, moments } of seeds.map(castOf)) {
      for (const moment of moments) {
        const drawn = frame(score, moment);
        tally.count(seed, score, moment);
        frames += 1;
        if (new Set(drawn.levels).size >= 3) colourful += 1;
        if (drawn.limited) limited += 1;
        if (isLifted(score, drawn)) lifted += 1;
      }
    }
  });

  const enough = 20;
  const expected = {
    pattern: [...libraryPatterns.map(referenceOf), 'own'],
    blend: blendNames,
    easing: [...easingNames, 'cubic-bezier'],
    curve: ['srgb', 'lightness', 'power'],
    zone: ['all', 'run', 'range', 'stepped', 'reversed', 'union', 'twins'],
    shape: ['straight', 'ring', 'arc', 'grid', 'points'],
    feature: ['removed', 'hidden', 'worn', 'balance', 'fading', 'endless', 'leaving', 'later loop'],
  };

  test.for(Object.entries(expected))(`every %s in ${enough} pieces or more`, ([kind, names]) => {
    const rare = names.filter((name) => tally.pieces(kind, name) < enough);
    expect(rare).toEqual([]);
  });

  test('95 % of the frames show three levels or more', () => {
    expect(frames).toBe(pieces * momentsEach);
    expect(colourful / frames).toBeGreaterThanOrEqual(0.95);
  });

  test('the limiter dims 10 % of the frames, and some are lifted to keep a power bank awake', () => {
    expect(limited / frames).toBeGreaterThanOrEqual(0.1);
    expect(lifted).toBeGreaterThanOrEqual(enough);
  });
});

/** No channel is darker than the keep-alive drive, not even of hidden pixels. */
function isLifted({ output }: Score, { drive }: Frame): boolean {
  return output.keepAliveDrive > 0 && drive.every((value) => value >= output.keepAliveDrive);
}
