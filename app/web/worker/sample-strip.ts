/** The neutral strip on which swatches are drawn, so that all patterns are seen under one light. */
import { prepareScore } from '../../../engine/look/prepare.ts';
import type { Score } from '../../../engine/look/score.ts';
import { checkPiece } from '../../../engine/piece/load.ts';
import type { PatternDefinition, Piece, PieceInput } from '../../../engine/piece/schema.ts';
import { swatchMilliseconds, swatchPixels, swatchRows } from './swatch-size.ts';
import { weaveRows } from './weave.ts';

/** Bent to a ring, as patterns that go by place would show half of themselves on a straight one. */
const ring: PieceInput = {
  version: 2,
  name: 'Sample strip',
  board: 'host',
  lines: [
    {
      pin: 6,
      part: 'ws2812b',
      runs: [
        {
          name: 'ring',
          flat: { kind: 'ring', count: swatchPixels, centre: [0, 0], diameterMillimetres: 120 },
        },
      ],
    },
  ],
  looks: [{ name: 'Swatch', lengthMilliseconds: swatchMilliseconds, tracks: [] }],
};

/**
 * The sheet of a pattern at its defaults: `swatchRows` rows of `swatchPixels` levels each.
 * @param own the piece's patterns that the name may mean
 * @returns null for a pattern that cannot be played
 */
export function* drawSwatch(
  pattern: string,
  own: readonly PatternDefinition[],
): Generator<void, Uint8Array<ArrayBuffer> | null> {
  const { value: piece } = checkPiece({ ...ring, patterns: own });
  yield;
  const score = piece === undefined ? null : scoreWith(piece, pattern);
  if (score === null) return null;
  yield;
  const sheet = new Uint8Array(swatchRows * swatchPixels * 3);
  let at = 0;
  const plan = { look: 0, fromMs: 0, toMs: swatchMilliseconds, rows: swatchRows, brightness: 255 };
  for (const { levels } of weaveRows(score, plan)) {
    sheet.set(levels, at);
    at += levels.length;
    yield;
  }
  return sheet;
}

/** The score of a piece whose one look is the pattern at its defaults, on all pixels. */
export function scoreWith(piece: Piece, pattern: string): Score | null {
  const clip = {
    pattern,
    zone: 'all',
    startMilliseconds: 0,
    lengthMilliseconds: swatchMilliseconds,
    endless: false,
    opacity: 255,
    blend: 'normal' as const,
    fadeInMilliseconds: 0,
    fadeOutMilliseconds: 0,
    seed: 0,
    parameters: {},
  };
  const look = {
    name: 'Swatch',
    lengthMilliseconds: swatchMilliseconds,
    dissolveMilliseconds: 0,
    tracks: [{ clips: [clip] }],
  };
  return prepareScore({ ...piece, looks: [look] }).value ?? null;
}
