/**
 * Patterns against a real WebGL 2 implementation: headless Chromium draws them as 32 bit floats from the very
 * shader that `weftlight patterns --glsl` prints. Compared in output steps, a 256th of full light.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { libraryPatterns, referenceOf as nameOf } from '../../engine/pattern/library.ts';
import { fragmentShader, shaderUniforms } from '../../engine/pattern/prelude.ts';
import type { GradientStops } from '../../engine/piece/schema.ts';
import { Chance } from '../support/generate/chance.ts';
import {
  calmSettings,
  compiled,
  heldSettings,
  type PatternSource,
  type PixelMoment,
  programOf,
  type Settings,
} from '../support/patterns.ts';
import { builtinPatterns } from '../support/patterns-builtins.ts';
import { deviationOf, isNearJump, onLevelScale, realMoment, unfloored } from '../support/patterns-error.ts';
import { generatePattern } from '../support/patterns-generate.ts';
import { type RealMoment, type Reference, referenceOf } from '../support/patterns-reference.ts';
import { openWebGl, type Uniform, type WebGl } from '../support/webgl.ts';

let webGl: WebGl;
beforeAll(async () => {
  webGl = await openWebGl();
});
afterAll(() => webGl.close());

interface Scene {
  readonly pattern: PatternSource;
  readonly settings: Settings;
  readonly zone: { readonly count: number; readonly seed: number };
  /** Row by row: all pixels of one moment. */
  readonly rows: readonly (readonly PixelMoment[])[];
}

/** A zone scattered over the plane, at some moments of its first minute: a float counts it finely enough. */
function sceneOf(pattern: PatternSource, seed: number, settings?: Settings): Scene {
  const chance = new Chance(seed);
  const zone = { count: chance.whole(40, 120), seed: chance.whole(0, 65_535) };
  const place = () => chance.whole(-16_384, 16_384);
  const places = chance.list(zone.count, () => ({ placeX: place(), placeY: place() }));
  const rows = chance.list(12, () => {
    const time = chance.whole(0, 60 * 65_536);
    const turn = chance.whole(0, 16_383);
    return places.map((at, index) => ({ ...at, time, turn, index }));
  });
  return { pattern, settings: settings ?? calmSettings(chance, pattern.parameters), zone, rows };
}

/** Red, green and blue of every pixel of every row. */
async function drawnByWebGl({ pattern, settings, zone, rows }: Scene): Promise<number[][]> {
  const { parameters } = pattern;
  const gradients = Object.fromEntries(
    parameters.flatMap(({ kind, name }) =>
      kind === 'gradient' ? [[name, settings[name] as GradientStops]] : [],
    ),
  );
  const own = Object.fromEntries(
    parameters.flatMap(({ kind, name }) =>
      kind === 'gradient' ? [] : [[name, uniformOf(kind, settings[name]!)]],
    ),
  );
  const { complaint, values } = await webGl.draw({
    fragment: fragmentShader(pattern, gradients),
    width: zone.count,
    places: rows[0]!.flatMap(({ placeX, placeY }) => [placeX / 16_384, placeY / 16_384]),
    rows: rows.map(([first]) => ({
      ...own,
      [shaderUniforms.count]: { kind: 'int', value: zone.count },
      [shaderUniforms.seed]: { kind: 'int', value: zone.seed },
      [shaderUniforms.time]: { kind: 'float', value: first!.time / 65_536 },
      [shaderUniforms.turn]: { kind: 'float', value: first!.turn / 16_384 },
    })),
  });
  expect(complaint).toBeUndefined();
  expect(values).toHaveLength(rows.length * zone.count * 4);
  return rows.flatMap((row, r) =>
    row.map((_, i) => values.slice((r * zone.count + i) * 4, (r * zone.count + i) * 4 + 3)),
  );
}

function uniformOf(kind: string, value: Settings[string]): Uniform {
  if (kind === 'colour') {
    const channels = [1, 3, 5].map((at) => Number.parseInt((value as string).slice(at, at + 2), 16) / 255);
    return { kind: 'vec3', value: channels };
  }
  return { kind: kind === 'number' ? 'float' : 'int', value: Number(value) };
}

/** The engine against WebGL, without the pixels that lie an input step from a jump. */
async function compare(scene: Scene) {
  const { pattern, settings, zone, rows } = scene;
  const program = programOf(compiled(pattern), settings, zone);
  const reference = referenceOf(pattern);
  const drawn = await drawnByWebGl(scene);
  const steps: number[] = [];
  let excluded = 0;
  for (const [at, moment] of rows.flat().entries()) {
    if (isNearJump(reference, realMoment(moment, zone), settings)) {
      excluded += 3;
      continue;
    }
    for (const [channel, own] of unfloored(program, moment, zone).entries()) {
      steps.push(Math.abs(own - onLevelScale(drawn[at]![channel]!)));
    }
  }
  return deviationOf(steps, excluded);
}

function expectAgreement({ median, high, excluded, samples }: Awaited<ReturnType<typeof compare>>): void {
  expect(samples).toBeGreaterThan(1000);
  expect(median).toBeLessThanOrEqual(1);
  expect(high).toBeLessThanOrEqual(4);
  expect(excluded).toBeLessThanOrEqual(0.02);
}

describe('G15 the patterns of the library in WebGL', () => {
  test.each(libraryPatterns)('$name with its defaults', async (pattern) => {
    const settings = Object.fromEntries(pattern.parameters.map((one) => [one.name, one.default]));
    expectAgreement(await compare(sceneOf(pattern, 1, settings)));
  });

  test.each(libraryPatterns)('$name with settings of all kinds', async (pattern) => {
    expectAgreement(await compare(sceneOf(pattern, 2)));
  });

  test('a wrong pattern is noticed', async () => {
    const pattern = libraryPatterns.find((one) => nameOf(one) === 'sleeper/1')!;
    const scene = sceneOf(pattern, 1);
    const faster = {
      ...pattern,
      source: pattern.source.replace('fract(time / period)', 'fract(time / period * 1.1)'),
    };
    expect(faster.source).not.toBe(pattern.source);
    const drawn = await drawnByWebGl({ ...scene, pattern: faster });
    const program = programOf(compiled(pattern), scene.settings, scene.zone);
    const steps = scene.rows
      .flat()
      .map((moment, at) =>
        Math.abs(unfloored(program, moment, scene.zone)[0]! - onLevelScale(drawn[at]![0]!)),
      );
    expect(deviationOf(steps, 0).high).toBeGreaterThan(4);
  });
});

describe('G14 built-in functions in WebGL', () => {
  test.each(Object.entries(builtinPatterns))('%s', async (_, source) => {
    expectAgreement(await compare(sceneOf({ source, parameters: [] }, 4)));
  });
});

describe('G14 our reference of real numbers in WebGL', () => {
  test('50 generated patterns, where the standard defines the result and nothing jumps', async () => {
    let compared = 0;
    let apart = 0;
    for (let seed = 0; seed < 50; seed++) {
      const pattern = generatePattern(seed, { tame: true, depth: 2 });
      const scene = sceneOf(pattern, seed);
      const held = heldSettings(compiled(pattern), scene.settings);
      const reference = referenceOf(pattern);
      const drawn = await drawnByWebGl({ ...scene, rows: scene.rows.slice(0, 3) });
      const chance = new Chance(seed);
      for (const [at, moment] of scene.rows.slice(0, 3).flat().entries()) {
        const real = realMoment(moment, scene.zone);
        let isOpen = false;
        const wanted = reference(real, scene.settings, {
          onOpen: () => {
            isOpen = true;
          },
        });
        if (isOpen || isNearJump(reference, real, held) || isNearFloatJump(reference, real, held, chance))
          continue;
        compared++;
        const isApart = wanted.some(
          (channel, i) => !(Math.abs(onLevelScale(channel) - onLevelScale(drawn[at]![i]!)) < 0.5),
        );
        if (isApart) apart++;
      }
    }
    expect(compared).toBeGreaterThan(4000);
    // A float loses its digits where a sum of large numbers is small: a few in ten thousand.
    expect(apart / compared).toBeLessThan(0.001);
  });
});

/** Whether the rounding of 32 bit floats alone may carry the result over a jump, or far. */
function isNearFloatJump(
  reference: Reference,
  moment: RealMoment,
  settings: Settings,
  chance: Chance,
): boolean {
  const here = reference(moment, settings).map(onLevelScale);
  const disturb = (value: number) => value + (chance.next() - 0.5) * (2 ** -22 + Math.abs(value) * 2 ** -21);
  return Array.from({ length: 8 }, () => reference(moment, settings, { disturb })).some((colour) =>
    colour.some((channel, i) => Math.abs(onLevelScale(channel) - here[i]!) > 0.25),
  );
}
