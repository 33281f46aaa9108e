/** What else a maker waits for. Times of this machine, best of some; no goals, but worth a look after a change. */
import { readdirSync, readFileSync } from 'node:fs';
import { rehearse } from '../../codegen/rehearse/rehearse.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { borrowFrame, stillMoment } from '../../engine/look/frame.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { compilePattern } from '../../engine/pattern/compile.ts';
import { libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import { loadPiece } from '../../engine/piece/load.ts';

const rehearsedMilliseconds = 3000;

export async function printWaits(): Promise<void> {
  console.log('\npattern        compiled in (ms)');
  for (const pattern of libraryPatterns) {
    const milliseconds = bestOf(9, () => compilePattern(pattern.source, pattern.parameters));
    console.log(`${referenceOf(pattern).padEnd(14)}${milliseconds.toFixed(2).padStart(8)}`);
  }
  console.log('\nsample                 opened  sketched (ms)   frame (us)   flash (bytes)   rehearsed at');
  for (const file of readdirSync('samples').filter((name) => name.endsWith('.piece.json'))) {
    console.log(await sampleLine(file));
  }
}

async function sampleLine(file: string): Promise<string> {
  const text = readFileSync(`samples/${file}`, 'utf8');
  const opened = bestOf(5, () => scoreOf(text));
  const score = scoreOf(text);
  const sketched = bestOf(3, () => generateSketch(score, 'atmega328p'));
  const began = performance.now();
  const { value, diagnostics } = await rehearse(score, { forMilliseconds: rehearsedMilliseconds });
  if (value === undefined) throw new Error(diagnostics[0]?.message);
  const speed = rehearsedMilliseconds / (performance.now() - began);
  return [
    file.replace('.piece.json', '').padEnd(20),
    opened.toFixed(1).padStart(9),
    sketched.toFixed(1).padStart(15),
    (frameMilliseconds(score) * 1000).toFixed(1).padStart(13),
    String(value.flashBytes).padStart(16),
    `${speed.toFixed(2)} of real time`.padStart(20),
  ].join('');
}

function scoreOf(text: string): Score {
  return prepareScore(loadPiece(text).value!).value!;
}

/** Of the slowest look, over its first ten seconds. */
function frameMilliseconds(score: Score): number {
  const frames = 500;
  const looks = score.looks.map((_, look) =>
    bestOf(5, () => {
      for (let frame = 0; frame < frames; frame++) borrowFrame(score, stillMoment(look, frame * 20, 64));
    }),
  );
  return Math.max(...looks) / frames;
}

function bestOf(times: number, work: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let time = 0; time < times; time++) {
    const began = performance.now();
    work();
    best = Math.min(best, performance.now() - began);
  }
  return best;
}
