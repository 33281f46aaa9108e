/** The swatch book without a browser: what lies in it, how it is found, what it lays. Rules: app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { nearestRun } from '../../app/web/picture/nearest.ts';
import { layAtHand, layOnRun, layOwn } from '../../app/web/swatches/laying.ts';
import { grouped, searched, swatchesOf } from '../../app/web/swatches/swatch.ts';
import { drawSwatch, scoreWith } from '../../app/web/worker/sample-strip.ts';
import { swatchMilliseconds, swatchPixels, swatchRows } from '../../app/web/worker/swatch-size.ts';
import { viewOf } from '../../app/web/worker/view.ts';
import { weigh } from '../../app/web/worker/weigh.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const parasol = samplePiece('jellyfish-parasol');
const swatches = swatchesOf(parasol, libraryPatterns);
const titles = (text: string) => searched(swatches, text).map(({ title }) => title);

/** What a generator comes to, and how often it can be interrupted. */
function result<T>(steps: Generator<void, T>): { value: T; yields: number } {
  let yields = 0;
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { value: step.value, yields };
    yields += 1;
  }
}

const laid = (piece: Piece, laying: ReturnType<typeof layAtHand>): Piece =>
  applyEdit(piece, laying!.edit).value!.piece;

describe('B1 the book', () => {
  test('has every pattern of the library and every own one, once, in a group', () => {
    const inGroups = grouped(swatches).flatMap((group) => group.swatches.map(({ pattern }) => pattern));
    expect([...inGroups].sort()).toEqual(swatches.map(({ pattern }) => pattern).sort());
    expect(new Set(inGroups).size).toBe(libraryPatterns.length + parasol.patterns.length);
    expect(grouped(swatches)[0]!.title).toBe('Your own');
    const groupOf = (title: string) =>
      grouped(swatches).find((group) => group.swatches.some((one) => one.title === title))?.title;
    expect(groupOf('Still')).toBe('At rest');
    expect(groupOf('Tide')).toBe('In motion');
    expect(groupOf('Brazier')).toBe('By chance');
  });

  test('is searched by the beginnings of words, whatever their case and marks', () => {
    expect(titles('')).toHaveLength(swatches.length);
    expect(titles('FLAME')).toContain('Brazier');
    expect(titles('wat mill')).toEqual(['Millrace']);
    expect(titles('flàme')).toEqual(titles('flame'));
    expect(titles('illrace')).toEqual([]);
  });
});

describe('B2 a swatch', () => {
  test('shows in each row the frame of its pattern at that time, on a strip of its own', () => {
    const { value: sheet, yields } = result(drawSwatch('millrace/1', []));
    expect(sheet).toHaveLength(swatchRows * swatchPixels * 3);
    expect(yields).toBeGreaterThanOrEqual(swatchRows);
    const strip = structuredClone(parasol);
    strip.lines[0]!.runs = [
      {
        name: 'strip',
        flat: {
          kind: 'straight',
          count: swatchPixels,
          start: [0, 0],
          pitchMillimetres: 10,
          directionDegrees: 0,
        },
        removed: [],
        hidden: [],
      },
    ];
    strip.zones = [];
    // Millrace goes along the zone, so that the shape of the strip does not matter.
    const score = scoreWith(strip, 'millrace/1')!;
    for (const row of [0, 1, 40, swatchRows - 1]) {
      const ms = Math.floor((row * swatchMilliseconds) / swatchRows);
      const { levels } = frame(score, stillMoment(0, ms, 255));
      const from = row * levels.length;
      expect(sheet!.subarray(from, from + levels.length)).toEqual(levels);
    }
  });

  test('is drawn for own patterns as well, and not for what cannot be played', () => {
    const [own] = parasol.patterns;
    expect(result(drawSwatch(own!.name, parasol.patterns)).value).not.toBeNull();
    const broken = { ...own!, source: 'lowp vec3 light() { return nothing; }' };
    expect(result(drawSwatch(own!.name, [broken])).value).toBeNull();
  });

  test('weighs what it draws on all pixels of the piece', () => {
    const { value: still } = result(weigh(parasol, 'still/1', 64));
    const score = scoreWith(parasol, 'still/1')!;
    expect(still!.milliamps).toBeCloseTo(frame(score, stillMoment(0, 0, 64)).milliamps, 6);
    const dim = result(weigh(parasol, 'still/1', 4)).value!;
    expect(dim.milliamps).toBeLessThan(still!.milliamps);
    expect(dim.limited).toBe(false);
    expect(result(weigh(parasol, 'still/1', 255)).value!.limited).toBe(true);
    const mist = result(weigh(parasol, 'mist/1', 64)).value!;
    expect(mist.milliseconds!).toBeGreaterThan(still!.milliseconds!);
    expect(result(weigh({ ...parasol, board: 'host' }, 'still/1', 64)).value!.milliseconds).toBeNull();
  });
});

describe('B3 laying', () => {
  const [drift] = parasol.looks;
  const inHand = { look: 0, track: 1, clip: 0 };

  test('at hand: on the pixels of the clip in hand, and what is there stays', () => {
    const laying = layAtHand(parasol, 'dew/1', { look: 0, ms: 0, selected: inHand });
    const { tracks } = laid(parasol, laying).looks[0]!;
    const clip = tracks[laying!.at.track]!.clips[laying!.at.clip]!;
    expect(clip).toMatchObject({ pattern: 'dew/1', zone: drift!.tracks[1]!.clips[0]!.zone });
    for (const track of drift!.tracks) expect(tracks).toContainEqual(track);
  });

  test('at hand, in a look without clips: on all pixels, from its start to its end', () => {
    const empty = structuredClone(parasol);
    empty.looks[0]!.tracks = [];
    const laying = layAtHand(empty, 'dew/1', { look: 0, ms: 0, selected: null });
    expect(laid(empty, laying).looks[0]!.tracks.map(({ clips }) => clips)).toEqual([
      [
        expect.objectContaining({
          pattern: 'dew/1',
          zone: 'all',
          startMilliseconds: 0,
          lengthMilliseconds: drift!.lengthMilliseconds,
        }),
      ],
    ]);
  });

  test('on a run: on that run, from the moment on', () => {
    const run = parasol.lines[0]!.runs[1]!.name;
    const laying = layOnRun(parasol, 'dew/1', run, { look: 0, ms: 5000 });
    const clip = laid(parasol, laying).looks[0]!.tracks[laying!.at.track]!.clips[laying!.at.clip]!;
    expect(clip).toMatchObject({ pattern: 'dew/1', zone: run, startMilliseconds: 5000 });
  });

  test('a pattern of my own begins as the swatch is, under a free name, and plays at once', () => {
    const tide = swatches.find(({ title }) => title === 'Tide')!;
    const first = laid(parasol, layOwn(parasol, tide, { look: 0, ms: 0, selected: null }));
    const laying = layOwn(first, tide, { look: 0, ms: 0, selected: null });
    const { patterns, looks } = laid(first, laying);
    expect(patterns.map(({ name }) => name)).toEqual(['bell stroke', 'my tide', 'my tide 2']);
    expect(patterns.at(-1)).toMatchObject({ source: tide.source, parameters: tide.parameters });
    const { track, clip } = laying!.at;
    expect(looks[0]!.tracks[track]!.clips[clip]!.pattern).toBe('my tide 2');
  });
});

test('B4 the run meant by a hand over the picture is that of the nearest pixel that can light up', () => {
  const view = viewOf(scoreOf(parasol));
  const size = { width: 480, height: 560 };
  const { runs } = parasol.lines[0]!;
  const rim = nearestRun(view, size, 0, 0)!;
  expect(runs[rim.run]!.name).toBe(runs[0]!.name);
  expect(rim.pixels).toEqual([...rim.pixels.keys()]);
  const low = nearestRun(view, size, 60, 560)!;
  expect(low.run).not.toBe(rim.run);
  expect(low.pixels.every((pixel) => view.runs[pixel] === low.run)).toBe(true);
  const dark = { ...view, hidden: view.hidden.map(() => 1) };
  expect(nearestRun(dark, size, 0, 0)).toBeNull();
});
