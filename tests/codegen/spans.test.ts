import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Span, spansOf, spanZone } from '../../codegen/player/spans.ts';

const entriesOf = (spans: readonly Span[]) =>
  spans.flatMap(({ count, pixel, pixelStep, index, indexStep }) =>
    Array.from({ length: count }, (_, i) => ({ pixel: pixel + i * pixelStep, index: index + i * indexStep })),
  );

describe('zones as spans', () => {
  it('S9 needs one span for a straight run, forwards, backwards or by every second pixel', () => {
    const run = (step: number) => Array.from({ length: 9 }, (_, i) => ({ pixel: 40 + i * step, index: i }));
    expect(spansOf(run(1))).toEqual([{ count: 9, pixel: 40, pixelStep: 1, index: 0, indexStep: 1 }]);
    expect(spansOf(run(-2))).toEqual([{ count: 9, pixel: 40, pixelStep: -2, index: 0, indexStep: 1 }]);
  });

  it('S9 knows a single pixel and an empty zone', () => {
    expect(spansOf([{ pixel: 5, index: 2 }])).toEqual([
      { count: 1, pixel: 5, pixelStep: 0, index: 2, indexStep: 0 },
    ]);
    expect(spansOf([])).toEqual([]);
  });

  it('S9 draws twins run by run, each pixel with its own place', () => {
    const entries = Array.from({ length: 6 }, (_, i) => [
      { pixel: i, index: i },
      { pixel: 20 - i, index: i },
    ]).flat();
    const places = Int16Array.from(entries.flatMap(({ pixel, index }) => [pixel * 100, index]));
    const { spans, places: spanned } = spanZone({ name: 'brim', count: 6, entries, places });
    expect(spans).toEqual([
      { count: 6, pixel: 0, pixelStep: 1, index: 0, indexStep: 1 },
      { count: 6, pixel: 15, pixelStep: 1, index: 5, indexStep: -1 },
    ]);
    expect(spanned).toEqual(entriesOf(spans).flatMap(({ pixel, index }) => [pixel * 100, index]));
  });

  it('S9 gives back the entries in their order, whatever they are (seed 17)', () => {
    const entry = fc.record({ pixel: fc.nat(1999), index: fc.nat(1999) });
    const runs = fc.tuple(entry, fc.integer({ min: -3, max: 3 }), fc.integer({ min: 1, max: 20 }));
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.array(entry, { maxLength: 4 }), runs.map(asEntries))), (parts) => {
        const entries = parts.flat();
        const spans = spansOf(entries);
        expect(entriesOf(spans)).toEqual(entries);
        expect(spans.length).toBeLessThanOrEqual(Math.max(1, entries.length));
      }),
      { seed: 17, numRuns: 500 },
    );
  });
});

function asEntries([{ pixel, index }, step, count]: [{ pixel: number; index: number }, number, number]) {
  return Array.from({ length: count }, (_, i) => ({ pixel: pixel + 60 + i * step, index: index + i }));
}
