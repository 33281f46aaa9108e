/** Differences between pieces, as the workers are told them. Rules: app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, differenceOf } from '../../app/web/worker/difference.ts';
import { samplePiece } from './browser/samples.ts';

const hat = samplePiece('ferrymans-hat');

describe('W18 a difference', () => {
  test('makes the value after out of the value before, with its fields in their order', () => {
    const value = fc.jsonValue({ maxDepth: 4 });
    fc.assert(
      fc.property(value, value, (before, after) => {
        const told = structuredClone(differenceOf(before, after));
        expect(JSON.stringify(changed(before, told))).toBe(JSON.stringify(after));
      }),
      { seed: 20_261_125, numRuns: 500 },
    );
  });

  test('shares what an edit left alone, and tells no more than the edit', () => {
    const [first, ...others] = hat.looks;
    const after = { ...hat, looks: [{ ...first!, name: 'Other' }, ...others] };
    const difference = differenceOf(hat, after);
    expect(JSON.stringify(difference).length).toBeLessThan(200);
    const here = changed(hat, difference);
    expect(here).toEqual(after);
    expect(here.lines).toBe(hat.lines);
    expect(here.looks[1]).toBe(hat.looks[1]);
    expect(here.looks[0]!.tracks).toBe(hat.looks[0]!.tracks);
  });

  test('of the very same piece is none', () => {
    expect(differenceOf(hat, hat)).toEqual({ kind: 'none' });
    expect(changed(hat, { kind: 'none' })).toBe(hat);
  });
});
