/** The tag without a page: figures as people type them, seeds, zones, palettes. Rules N of app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withBounds } from '../../app/web/compose/own-pattern.ts';
import { readHex } from '../../app/web/tag/colour/mix.ts';
import { paletteOf } from '../../app/web/tag/colour/palette.ts';
import { byteShare, plainMeasure, share, time } from '../../app/web/tag/measures.ts';
import { nextSeed, readsSeed } from '../../app/web/tag/seed.ts';
import { zoneChoices } from '../../app/web/tag/zone-choices.ts';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const seed = 20_262;
const parasol = samplePiece('jellyfish-parasol');

describe('N1 figures', () => {
  test.each([
    ['8', 8],
    ['8 s', 8],
    ['8S', 8],
    [' 0,25 s ', 0.25],
    ['-3.5', -3.5],
    ['.5', 0.5],
    ['8 min', undefined],
    ['eight', undefined],
    ['', undefined],
    ['1e3', undefined],
  ])('"%s" seconds of a parameter are %s', (text, value) => {
    expect(plainMeasure('s').read(text)).toBe(value);
  });

  test.each([
    ['3.7', 3700],
    ['3.7 s', 3700],
    ['350 ms', 350],
    ['2 min 5 s', 125_000],
    ['2min5s', 125_000],
    ['1 h 20 min', 4_800_000],
    ['1:30', 90_000],
    ['1:00:02.5', 3_602_500],
    ['0,0204', 20],
    ['3 apples', undefined],
    ['5 3', undefined],
    ['', undefined],
  ])('"%s" is a time of %s ms', (text, ms) => {
    expect(time.read(text)).toBe(ms);
  });

  test('what is written is read again as the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 32_400_000 }), (ms) => {
        expect(time.read(time.text(ms))).toBe(ms);
      }),
      { seed },
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 255 }), (byte) => {
        expect(byteShare.read(byteShare.text(byte))).toBe(byte);
      }),
      { seed },
    );
    fc.assert(
      fc.property(fc.integer({ min: -1_638_300_000, max: 1_638_300_000 }), (hundredThousandths) => {
        const value = hundredThousandths / 100_000;
        expect(plainMeasure('mm').read(plainMeasure('mm').text(value))).toBe(value);
      }),
      { seed },
    );
    expect(share.read(share.text(0.375))).toBe(0.375);
  });

  test('hex codes are read short and long, with and without their sign', () => {
    expect(['#FFAE42', 'ffae42', ' #fa4 ', '#ffae4', 'orange'].map(readHex)).toEqual([
      '#ffae42',
      '#ffae42',
      '#ffaa44',
      undefined,
      undefined,
    ]);
  });
});

test('N3 every zone is there with as many pixels as the engine plays on', () => {
  const { all, runs, own } = zoneChoices(parasol);
  const counts = new Map(scoreOf(parasol).zones.map(({ name, count }) => [name, count]));
  const offered = [all, ...runs, ...own];
  expect(offered.map(({ name }) => name)).toEqual([
    'all',
    ...parasol.lines.flatMap((line) => line.runs.map((run) => run.name)),
    ...parasol.zones.map((zone) => zone.name),
  ]);
  const played = offered.filter(({ name }) => counts.has(name));
  expect(played.length).toBeGreaterThan(1);
  for (const { name, count } of played) expect(count, name).toBe(counts.get(name));
  expect(zoneChoices({ ...parasol })).toBe(zoneChoices(parasol));
});

test('another throw comes by every seed before it comes back', () => {
  const seen = new Set<number>();
  for (let at = 0; !seen.has(at); at = nextSeed(at)) seen.add(at);
  expect(seen.size).toBe(65_536);
});

test('a pattern that leaves nothing to chance is offered no throw', () => {
  expect(readsSeed('// the seed is not read\nlowp vec3 light() { return vec3(0.0); }')).toBe(false);
  const chancy = libraryPatterns.filter(({ source }) => readsSeed(source)).map(({ name }) => name);
  expect(chancy).toContain('dew');
  expect(chancy).not.toContain('still');
});

test('the palette has each colour once, the most used one first', () => {
  const looks = structuredClone(parasol.looks.slice(0, 1));
  looks[0]!.tracks = [
    {
      clips: [
        { ...parasol.looks[0]!.tracks[0]!.clips[0]!, parameters: { tint: '#FF0000' } },
        {
          ...parasol.looks[0]!.tracks[0]!.clips[0]!,
          parameters: {
            water: [
              { at: 0, colour: '#00ff00' },
              { at: 1, colour: '#0000ff' },
            ],
            tint: {
              keys: [
                { atMilliseconds: 0, value: '#0000FF', easing: 'linear' },
                { atMilliseconds: 9, value: '#ffffff', easing: 'linear' },
              ],
            },
            period: 3,
          },
        },
      ],
    },
  ];
  expect(paletteOf({ looks }, 10)).toEqual(['#0000ff', '#ff0000', '#00ff00', '#ffffff']);
  expect(paletteOf({ looks }, 2)).toEqual(['#0000ff', '#ff0000']);
});

test('N11 a default comes along with its range', () => {
  const parameter = { kind: 'number', name: 'pace', label: 'Pace', min: 2, max: 5, default: 1 } as const;
  expect(withBounds(parameter).default).toBe(2);
  expect(withBounds({ ...parameter, default: 9 }).default).toBe(5);
});
