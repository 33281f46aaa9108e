/** Ten thousand damaged piece files: none stops the loader, and each is told where it is wrong. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Diagnostic } from '../../engine/diagnostic.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import { chance, damaged } from './damage.ts';

const names = ['ferrymans-hat', 'jellyfish-parasol', 'moth-wings'];
const samples = names.map((name) => readFileSync(`samples/${name}.piece.json`, 'utf8'));
const files = 10_000;

const isPlaced = ({ path, span, inFile }: Diagnostic) =>
  path !== undefined && (span ?? inFile) !== undefined && (span ?? inFile)!.line >= 1;

test(`${files} damaged files (seed 2026)`, () => {
  const random = chance(2026);
  const told = { syntax: 0, schema: 0, checks: 0, sound: 0 };
  let slowest = 0;
  for (let i = 0; i < files; i++) {
    const text = damaged(samples[i % samples.length]!, random);
    const start = performance.now();
    const { value, diagnostics } = loadPiece(text);
    slowest = Math.max(slowest, performance.now() - start);
    const errors = diagnostics.filter(({ severity }) => severity === 'error');
    expect(value === undefined, text).toBe(errors.length > 0);
    for (const diagnostic of diagnostics) {
      expect(isPlaced(diagnostic), `${JSON.stringify(diagnostic)} in file ${i}`).toBe(true);
      expect(diagnostic.code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(diagnostic.message).toMatch(/\.$/);
      expect(diagnostic.advice).toMatch(/[.?]$/);
    }
    told[stageOf(errors)] += 1;
  }
  expect(slowest).toBeLessThan(1000);
  // The damage reaches every stage, so that each of them has been put to the test.
  for (const [stage, count] of Object.entries(told)) expect(count, stage).toBeGreaterThan(files / 50);
});

const schemaCodes =
  /^(missing|unknown-(key|word)|wrong-|out-of-range|.*-form|name-|gradient-|keys-|zone-nesting)/;

function stageOf(errors: readonly Diagnostic[]): 'syntax' | 'schema' | 'checks' | 'sound' {
  if (errors.length === 0) return 'sound';
  if (errors.some(({ code }) => /^(json-syntax|key-)/.test(code))) return 'syntax';
  return errors.some(({ code }) => schemaCodes.test(code)) ? 'schema' : 'checks';
}
