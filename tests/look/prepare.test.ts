import { expect, test } from 'vitest';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';

const still = (changes: object = {}) => ({ pattern: 'still/1', lengthMilliseconds: 500, ...changes });

const looks: PieceInput['looks'] = [
  {
    name: 'Dusk',
    lengthMilliseconds: 1000,
    dissolveMilliseconds: 300,
    tracks: [
      { clips: [still({ zone: 'rail' }), still({ startMilliseconds: 500, blend: 'screen', opacity: 7 })] },
      { clips: [still({ endless: true, fadeInMilliseconds: 40, fadeOutMilliseconds: 50 })] },
    ],
  },
  { name: 'Ebb', lengthMilliseconds: 2000, tracks: [] },
];

test('a score holds looks and clips, bottom track first, with what the file says of them', () => {
  const { value: score, diagnostics } = prepareScore(pieceWith({ looks }));
  expect(diagnostics).toEqual([]);
  expect(
    score!.looks.map(({ name, lengthMilliseconds, dissolveMilliseconds }) => [
      name,
      lengthMilliseconds,
      dissolveMilliseconds,
    ]),
  ).toEqual([
    ['Dusk', 1000, 300],
    ['Ebb', 2000, 0],
  ]);
  const told = score!.looks[0]!.clips.map(({ program, zone, ...rest }) => ({ zone: zone.name, ...rest }));
  const usual = { pattern: 'still/1', startMilliseconds: 0, lengthMilliseconds: 500, opacity: 255 };
  expect(told).toEqual([
    {
      ...usual,
      track: 0,
      clip: 0,
      zone: 'rail',
      endless: false,
      blend: 'normal',
      fadeInMilliseconds: 0,
      fadeOutMilliseconds: 0,
    },
    {
      ...usual,
      track: 0,
      clip: 1,
      zone: 'all',
      startMilliseconds: 500,
      opacity: 7,
      endless: false,
      blend: 'screen',
      fadeInMilliseconds: 0,
      fadeOutMilliseconds: 0,
    },
    {
      ...usual,
      track: 1,
      clip: 0,
      zone: 'all',
      endless: true,
      blend: 'normal',
      fadeInMilliseconds: 40,
      fadeOutMilliseconds: 50,
    },
  ]);
});

test('a zone that several clips play on is there once', () => {
  const { value: score } = prepareScore(pieceWith({ looks }));
  expect(score!.zones.map(({ name }) => name)).toEqual(['rail', 'all']);
  expect(score!.looks[0]!.clips[1]!.zone).toBe(score!.zones[1]);
});

test('tables and figures are those of the piece', () => {
  const piece = pieceWith({
    output: { curve: { power: 1 }, balance: [256, 200, 100] },
    supply: { limitMilliamps: 900 },
  });
  const { value: score } = prepareScore(piece);
  expect(score!.output.gamma[128]).toBe(Math.round((65280 * 128) / 255));
  expect(score!.output.balance).toEqual([256, 200, 100]);
  expect(score!.current).toMatchObject({ pixels: 8, limitMilliamps: 900 });
});

test('a pattern of the piece that does not compile is told once, and leaves no score', () => {
  const patterns = [{ name: 'broken', source: 'lowp vec3 light() { return vec2(0.0); }' }];
  const clips = [still({ pattern: 'broken' }), still({ pattern: 'broken', startMilliseconds: 500 })];
  const piece = pieceWith({
    patterns,
    looks: [{ name: 'Dusk', lengthMilliseconds: 1000, tracks: [{ clips }] }],
  });
  const { value, diagnostics } = prepareScore(piece);
  expect(value).toBeUndefined();
  expect(diagnostics).toHaveLength(1);
  expect(diagnostics[0]).toMatchObject({ severity: 'error', path: 'patterns[0].source' });
  expect(diagnostics[0]!.span).toBeDefined();
});

test('faults of zones come before anything is compiled', () => {
  const zones = [{ name: 'stern', source: { kind: 'run', run: 'keel' } }] as const;
  const { value, diagnostics } = prepareScore(pieceWith({ zones: [...zones] }));
  expect(value).toBeUndefined();
  expect(diagnostics[0]!.path).toMatch(/^zones\[0\]/);
});
