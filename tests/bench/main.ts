/**
 * How fast the preview draws, pattern by pattern, as a ratio to native code of the same graph, and what else a
 * maker waits for. Ratios are taken within one run, from interleaved measurements; NOTES.md says what they mean.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Case, cases, sizes } from './cases.ts';
import { printEdits } from './edits.ts';
import { NativeBench } from './native.ts';
import { printPage } from './page/page.ts';
import { PreviewBench } from './preview.ts';
import { printWaits } from './waits.ts';

const rounds = 15;
const goal = { geometricMean: 2.5, worst: 3.5 };
/** A ratio this much above the baseline is told; machines differ by less, as both sides share one. */
const tolerance = 1.25;
const baselineFile = 'tests/bench/baseline.json';

interface Result {
  readonly one: Case;
  readonly preview: number;
  readonly native: number;
  readonly ratio: number;
}

function measureAll(folder: string): Result[] {
  const preview = new PreviewBench();
  const native = new NativeBench(cases, folder);
  const best = new Map(
    cases.map((one) => [one, { preview: Number.POSITIVE_INFINITY, native: Number.POSITIVE_INFINITY }]),
  );
  for (let round = 0; round < rounds; round++) {
    for (const [one, so] of best) {
      const here = preview.measure(one);
      const there = native.measure(one);
      if (here.lastFrame !== there.lastFrame)
        throw new Error(`${one.name}: the two sides drew different frames`);
      so.preview = Math.min(so.preview, here.nanosecondsPerPixel);
      so.native = Math.min(so.native, there.nanosecondsPerPixel);
    }
  }
  return [...best].map(([one, so]) => ({ one, ...so, ratio: so.preview / so.native }));
}

const geometricMean = (values: readonly number[]) =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);

function printResults(results: readonly Result[], baseline: Readonly<Record<string, number>>): void {
  const cell = (value: number, width = 9) => value.toFixed(2).padStart(width);
  for (const size of sizes) {
    console.log(`\n${size} pixels       preview    native     ratio  baseline   (ns per pixel)`);
    for (const { one, preview, native, ratio } of results.filter(({ one }) => one.pixels === size)) {
      const before = baseline[one.name];
      const slower = before !== undefined && ratio > before * tolerance ? '  slower than the baseline' : '';
      const usual = before === undefined ? '        -' : cell(before);
      console.log(
        `${one.pattern.padEnd(14)}${cell(preview)} ${cell(native)} ${cell(ratio)} ${usual}${slower}`,
      );
    }
  }
  const ratios = results.map(({ ratio }) => ratio);
  const worst = results.reduce((a, b) => (b.ratio > a.ratio ? b : a));
  const mean = geometricMean(ratios);
  const verdict = (value: number, limit: number) =>
    `${value.toFixed(2)} (goal ${limit}${value <= limit ? '' : ', missed'})`;
  console.log(`\ngeometric mean ${verdict(mean, goal.geometricMean)}`);
  console.log(`worst          ${verdict(worst.ratio, goal.worst)}: ${worst.one.name}`);
  if (mean > goal.geometricMean || worst.ratio > goal.worst) process.exitCode = 1;
}

const given = new Set(process.argv.slice(2));
const baseline: Record<string, number> = JSON.parse(readFileSync(baselineFile, 'utf8'));
const measured: Record<string, number> = {};

if (!given.has('--page')) {
  const folder = mkdtempSync(join(tmpdir(), 'weftlight-bench-'));
  try {
    const results = measureAll(folder);
    printResults(results, baseline);
    for (const { one, ratio } of results) measured[one.name] = Number(ratio.toFixed(2));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
if (!given.has('--ratios') && !given.has('--page')) {
  await printWaits();
  printEdits();
}
if (!given.has('--ratios')) Object.assign(measured, await printPage(baseline));
if (given.has('--update')) {
  writeFileSync(baselineFile, `${JSON.stringify({ ...baseline, ...measured }, null, 2)}\n`);
}
