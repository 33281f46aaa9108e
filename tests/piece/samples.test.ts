/** The samples: sound, of the promised sizes, together showing all that a piece can hold, and calm. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../engine/layout/layout.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import { blendNames } from '../../engine/look/blend.ts';
import { frame } from '../../engine/look/frame.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import type { Clip, Piece, ZoneSource } from '../../engine/piece/schema.ts';

interface Sample {
  readonly piece: Piece;
  readonly layout: Layout;
  readonly score: Score;
}

function sample(name: string): Sample {
  const { value: piece, diagnostics } = loadPiece(readFileSync(`samples/${name}.piece.json`, 'utf8'));
  expect(diagnostics).toEqual([]);
  const { value: layout } = prepareLayout(piece!);
  const { value: score } = prepareScore(piece!);
  return { piece: piece!, layout: layout!, score: score! };
}

const samples = {
  "ferryman's hat": sample('ferrymans-hat'),
  'moth wings': sample('moth-wings'),
  'jellyfish parasol': sample('jellyfish-parasol'),
};
const all = Object.values(samples);
const clipsOf = ({ piece }: Sample): Clip[] =>
  piece.looks.flatMap((look) => look.tracks.flatMap((track) => track.clips));
const clips = all.flatMap(clipsOf);
const shapesOf = ({ piece }: Sample) =>
  piece.lines[0]!.runs.flatMap((run) => [run.flat, run.worn ?? run.flat]);

function kindsOf(source: ZoneSource): string[] {
  if (!('of' in source)) return [source.kind];
  return [source.kind, ...(Array.isArray(source.of) ? source.of : [source.of]).flatMap(kindsOf)];
}

describe('sizes', () => {
  test.each(Object.entries(samples))('%s has 30 to 180 pixels and 4 to 6 looks', (_, { piece, layout }) => {
    expect(layout.pixels.length).toBeGreaterThanOrEqual(30);
    expect(layout.pixels.length).toBeLessThanOrEqual(180);
    expect(piece.looks.length).toBeGreaterThanOrEqual(4);
    expect(piece.looks.length).toBeLessThanOrEqual(6);
    expect(piece.board).toBe('atmega328p');
  });

  test("the ferryman's hat has exactly 60 pixels and 5 looks", () => {
    const { piece, layout } = samples["ferryman's hat"];
    expect([layout.pixels.length, piece.looks.length]).toEqual([60, 5]);
  });

  test('the jellyfish parasol is the largest: a ring and eight strips, 180 pixels', () => {
    const { piece, layout } = samples['jellyfish parasol'];
    expect(piece.lines[0]!.runs.map(({ flat }) => flat.kind)).toEqual(['ring', ...Array(8).fill('straight')]);
    expect(layout.pixels.length).toBe(180);
  });
});

describe('together they show', () => {
  test('every library pattern, and an own one', () => {
    const used = new Set(clips.map(({ pattern }) => pattern));
    for (const { name, revision } of libraryPatterns) expect(used).toContain(`${name}/${revision}`);
    const own = all.flatMap(({ piece }) => piece.patterns.map(({ name }) => name));
    expect(own.length).toBeGreaterThan(0);
    for (const name of own) expect(used).toContain(name);
  });

  test('every blend', () => {
    expect(new Set(clips.map(({ blend }) => blend))).toEqual(new Set(blendNames));
  });

  test('keyframes with several easings, a curve of its own among them', () => {
    const easings = clips.flatMap(({ parameters }) =>
      Object.values(parameters).flatMap((value) =>
        typeof value === 'object' && !Array.isArray(value) ? value.keys.map(({ easing }) => easing) : [],
      ),
    );
    expect(new Set(easings.filter((easing) => typeof easing === 'string')).size).toBeGreaterThanOrEqual(6);
    expect(easings.some((easing) => Array.isArray(easing))).toBe(true);
  });

  test('fades, opacity, dissolves, an endless clip, looks that move on', () => {
    expect(clips.some(({ fadeInMilliseconds }) => fadeInMilliseconds > 0)).toBe(true);
    expect(clips.some(({ fadeOutMilliseconds }) => fadeOutMilliseconds > 0)).toBe(true);
    expect(clips.some(({ opacity }) => opacity < 255)).toBe(true);
    expect(clips.some(({ endless }) => endless)).toBe(true);
    const looks = all.flatMap(({ piece }) => piece.looks);
    expect(looks.some(({ dissolveMilliseconds }) => dissolveMilliseconds > 0)).toBe(true);
    expect(looks.some(({ moveOn }) => moveOn?.to !== undefined)).toBe(true);
    expect(looks.some(({ moveOn }) => moveOn !== undefined && moveOn.to === undefined)).toBe(true);
  });

  test('zones from every kind of source, and each zone is played on', () => {
    const kinds = all.flatMap(({ piece }) => piece.zones.flatMap(({ source }) => kindsOf(source)));
    expect(new Set(kinds)).toEqual(new Set(['all', 'run', 'range', 'stepped', 'reversed', 'union', 'twins']));
    for (const each of all) {
      const used = new Set(clipsOf(each).map(({ zone }) => zone));
      for (const { name } of each.piece.zones) expect(used).toContain(name);
    }
  });

  test('every shape but the arc', () => {
    const kinds = new Set(all.flatMap(shapesOf).map(({ kind }) => kind));
    expect(kinds).toEqual(new Set(['straight', 'ring', 'grid', 'points']));
  });

  test('removed and hidden pixels', () => {
    const runs = all.flatMap(({ piece }) => piece.lines[0]!.runs);
    expect(runs.some(({ removed }) => removed.length > 0)).toBe(true);
    expect(runs.some(({ hidden }) => hidden.length > 0)).toBe(true);
  });

  test('press, hold and double press, and every action', () => {
    const buttons = all.flatMap(({ piece }) => piece.controls.buttons);
    const actions = buttons.flatMap(({ press, hold, double }) => [press, hold, double]);
    expect(buttons.some(({ press, hold, double }) => press && hold && double)).toBe(true);
    expect(new Set(actions.flatMap((action) => action?.do ?? []))).toEqual(
      new Set(['next-look', 'previous-look', 'go-to-look', 'brightness-step', 'blackout', 'pause']),
    );
  });
});

describe('they could be made', () => {
  // Strips are sold with 30 and 60 pixels a metre: 33.3 and 16.7 mm from one to the next.
  test('rings and strips keep the pitch of strips that are sold', () => {
    for (const shape of all.flatMap(shapesOf)) {
      if (shape.kind === 'straight') expect(shape.pitchMillimetres).toBeCloseTo(1000 / 30, 1);
      if (shape.kind === 'grid') expect(shape.pitchMillimetres).toBeCloseTo(1000 / 60, 1);
      if (shape.kind !== 'ring') continue;
      expect((Math.PI * shape.diameterMillimetres) / shape.count).toBeCloseTo(1000 / 30, 1);
    }
  });

  test('worn tentacles are as long as on the bench', () => {
    const { layout } = samples['jellyfish parasol'];
    const hanging = layout.pixels.filter(({ run }) => run > 0);
    for (const [i, pixel] of hanging.entries()) {
      const above = hanging[i - 1];
      if (above === undefined || above.run !== pixel.run) continue;
      const step = Math.hypot(pixel.worn.x - above.worn.x, pixel.worn.y - above.worn.y);
      expect(Math.abs(step - 1000 / 30)).toBeLessThan(0.2);
      expect(pixel.worn.y).toBeLessThan(above.worn.y);
    }
  });

  test('the wings of the moth mirror each other', () => {
    const { layout } = samples['moth wings'];
    for (const name of ['forewings', 'hindwings', 'wings']) {
      const { entries, count } = layout.zones.get(name)!;
      expect(entries).toHaveLength(2 * count);
      for (let index = 0; index < count; index++) {
        const [left, right] = entries
          .filter((entry) => entry.index === index)
          .map(({ pixel }) => layout.pixels[pixel]!.worn);
        expect([left!.x, left!.y]).toEqual([-right!.x, right!.y]);
      }
    }
  });
});

/** Frames of one loop of a look at its start brightness, one every 40 ms, up to 30 s. */
function* framesOf({ piece, score }: Sample, look: number) {
  const { lengthMilliseconds } = piece.looks[look]!;
  for (let ms = 0; ms < Math.min(lengthMilliseconds, 30_000); ms += 40) {
    yield frame(score, {
      look,
      ms,
      brightness: piece.output.startBrightness,
      blackout: false,
      paused: false,
      uptimeMs: ms,
      leaving: null,
    });
  }
}

const looks = Object.entries(samples).flatMap(([name, each]) =>
  each.piece.looks.map((look, index) => ({ name: `${name}, ${look.name}`, each, index })),
);

describe('every look', () => {
  test.each(looks)('$name stays within the limit and lights something', ({ each, index }) => {
    const milliamps = [...framesOf(each, index)].map((shown) => shown.milliamps);
    expect(Math.max(...milliamps)).toBeLessThanOrEqual(each.piece.supply.limitMilliamps);
    const base =
      each.score.current.chipTenths + each.score.current.pixels * each.score.current.quiescentTenths;
    expect(Math.min(...milliamps)).toBeGreaterThan(base / 10);
  });

  test.each(looks)('$name never flashes more than three times a second', ({ each, index }) => {
    const luminances = [...framesOf(each, index)].map(({ levels }) => luminancesOf(levels));
    for (let pixel = 0; pixel < each.layout.pixels.length; pixel++) {
      const most = mostFlashes(
        luminances.map((row) => row[pixel]!),
        25,
      );
      expect(most, `pixel ${pixel}`).toBeLessThanOrEqual(3);
    }
  });
});

test('the default limit of 400 mA dims some looks, and leaves others alone', () => {
  const dimmed = looks.filter(({ each, index }) => {
    if (each.piece.supply.limitMilliamps !== 400) return false;
    return [...framesOf(each, index)].some(({ milliamps }) => milliamps > 395);
  });
  expect(dimmed.length).toBeGreaterThanOrEqual(3);
  expect(dimmed.length).toBeLessThan(looks.length / 2);
});

/** Relative luminance by WCAG 2.2: 0.2126 R + 0.7152 G + 0.0722 B of linear channels. */
function luminancesOf(levels: Uint8Array): number[] {
  const linear = (level: number) =>
    level / 255 <= 0.04045 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4;
  return Array.from({ length: levels.length / 3 }, (_, pixel) => {
    const [red, green, blue] = levels.subarray(3 * pixel, 3 * pixel + 3);
    return 0.2126 * linear(red!) + 0.7152 * linear(green!) + 0.0722 * linear(blue!);
  });
}

/**
 * Most general flashes by WCAG 2.2 in any second: pairs of opposing changes of 10 % or more of full
 * luminance, the darker state below 0.80. Stricter than the standard, as one pixel counts by itself.
 */
function mostFlashes(luminances: readonly number[], framesPerSecond: number): number {
  const changes: number[] = [];
  let extreme = luminances[0]!;
  let rising: boolean | undefined;
  for (const [at, luminance] of luminances.entries()) {
    const isFurther = rising === undefined ? false : rising ? luminance > extreme : luminance < extreme;
    if (isFurther) {
      extreme = luminance;
    } else if (Math.abs(luminance - extreme) >= 0.1 && Math.min(luminance, extreme) < 0.8) {
      changes.push(at);
      rising = luminance > extreme;
      extreme = luminance;
    }
  }
  let most = 0;
  for (const [i, start] of changes.entries()) {
    const within = changes.slice(i).filter((at) => at < start + framesPerSecond).length;
    most = Math.max(most, Math.floor(within / 2));
  }
  return most;
}

test('flashes are counted as they are meant', () => {
  const square = (period: number) =>
    Array.from({ length: 100 }, (_, i) => (i % period < period / 2 ? 0.5 : 0.1));
  expect(mostFlashes(square(4), 25)).toBe(6);
  expect(mostFlashes(square(10), 25)).toBe(2);
  expect(
    mostFlashes(
      Array.from({ length: 100 }, (_, i) => 0.5 + 0.04 * (i % 2)),
      25,
    ),
  ).toBe(0);
  expect(
    mostFlashes(
      Array.from({ length: 100 }, (_, i) => 0.82 + 0.15 * (i % 2)),
      25,
    ),
  ).toBe(0);
});
