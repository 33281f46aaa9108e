/** Every sample and every look of it on the emulated chip. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rehearse } from '../../codegen/rehearse/rehearse.ts';
import { rehearsalFaults } from '../../codegen/rehearse/report.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import { expectTrace, sevenAndThree } from './presses.ts';

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter((name) => name.endsWith('.piece.json'))
  .map((name) => ({ name: name.replace('.piece.json', ''), score: scoreOf(name) }));

function scoreOf(file: string): Score {
  const { value: piece } = loadPiece(readFileSync(new URL(file, folder), 'utf8'));
  return prepareScore(piece!).value!;
}

const looks = samples.flatMap(({ name, score }) =>
  score.looks.map((look, index) => ({ title: `${name}, ${look.name}`, score, index })),
);

describe('the samples', () => {
  it.each(looks)('$title: 100 frames and more, each as the engine draws it', async ({ score, index }) => {
    const { value: report, diagnostics } = await rehearse(score, {
      startLook: index,
      forMilliseconds: 5_000,
    });
    expect(diagnostics).toEqual([]);
    expect(rehearsalFaults(report!)).toEqual([]);
    expect(report!.frames).toBeGreaterThanOrEqual(100);
  });

  it.each(samples)(
    '$name: 7 bounced presses and 3 holds of its button give the trace of "press"',
    async ({ score }) => {
      const { value: report, diagnostics } = await rehearse(score, { presses: sevenAndThree, bounceSeed: 4 });
      expect(diagnostics).toEqual([]);
      expect(rehearsalFaults(report!)).toEqual([]);
      expectTrace(report!, score, sevenAndThree);
    },
  );
});
