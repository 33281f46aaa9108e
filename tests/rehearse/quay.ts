/** A quay rail with lanterns for rehearsals: bright enough, and with enough levels, to show a small fault. */
import { expect } from 'vitest';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

type LookInput = PieceInput['looks'][number];
type ClipInput = LookInput['tracks'][number]['clips'][number];

const clip = (pattern: string, more: Partial<ClipInput> = {}): ClipInput => ({
  pattern,
  lengthMilliseconds: 1200,
  ...more,
});

const water = {
  water: [
    { at: 0, colour: '#0a2040' },
    { at: 0.5, colour: '#e0f0a0' },
    { at: 1, colour: '#ff9030' },
  ],
};

/** Moving, with a second clip multiplied on it and fades at both ends. */
const dusk: LookInput = {
  name: 'Dusk',
  lengthMilliseconds: 1200,
  tracks: [
    { clips: [clip('millrace/1', { fadeInMilliseconds: 300, parameters: water })] },
    {
      clips: [
        clip('sleeper/1', {
          blend: 'multiply',
          opacity: 200,
          fadeOutMilliseconds: 500,
          parameters: { tint: '#f0c8a0', period: 1.5, lowest: 0.2 },
        }),
      ],
    },
  ],
};

const dawn: LookInput = {
  name: 'Dawn',
  lengthMilliseconds: 1000,
  dissolveMilliseconds: 400,
  tracks: [{ clips: [clip('procession/1', { lengthMilliseconds: 1000, blend: 'screen' })] }],
};

export function quay(pixels: number, changes: Partial<PieceInput> = {}): Score {
  const piece = pieceWith({
    name: 'Quay rail',
    lines: [lineOf(pixels)],
    looks: [dusk, dawn],
    controls: {
      buttons: [
        { name: 'rail', pin: 2, press: { do: 'next-look' }, hold: { do: 'brightness-step' } },
        { name: 'pocket', pin: 3, press: { do: 'pause' }, hold: { do: 'blackout' } },
      ],
    },
    output: { startBrightness: 255 },
    supply: { limitMilliamps: 20_000 },
    ...changes,
  });
  const { value: score, diagnostics } = prepareScore(piece);
  expect(diagnostics).toEqual([]);
  return score!;
}
