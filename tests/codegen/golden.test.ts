/**
 * The whole file of one tiny piece, for the eye: a review shows what a change does to it. Written anew only
 * with UPDATE_GOLDENS=1; a missing one is a failure.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { generateSketch } from '../../codegen/sketch.ts';
import { lookOf, puntLantern, scoreOf } from './scores.ts';

const tiny = scoreOf(
  puntLantern({
    looks: [
      lookOf('Glow', [{ parameters: { tint: '#f0a030' } }]),
      lookOf('Flow', [{ pattern: 'millrace/1', fadeInMilliseconds: 500 }]),
    ],
    controls: { buttons: [{ name: 'knob', pin: 2, press: { do: 'next-look' } }] },
  }),
);

it('S2 the file of a tiny piece is as it was', () => {
  const { text, fileName } = generateSketch(tiny, 'atmega328p').value!;
  const file = new URL(`golden/${fileName}`, import.meta.url);
  if (process.env.UPDATE_GOLDENS === '1') writeFileSync(file, text);
  expect(existsSync(file), `golden/${fileName} is missing; UPDATE_GOLDENS=1 writes it`).toBe(true);
  expect(text).toBe(readFileSync(file, 'utf8'));
});
