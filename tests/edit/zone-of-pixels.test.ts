/** Zones of chosen pixels: hand-made examples, and the way back from any choice and any order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { newZone } from '../../engine/edit/offers/add-zone.ts';
import { type PixelOfRun, sourceOfPixels } from '../../engine/edit/offers/zone-of-pixels.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import { newPiece } from '../../engine/piece/new-piece.ts';
import type { Piece, Shape, ZoneSource } from '../../engine/piece/schema.ts';
import { generated, sound } from './pieces.ts';

const straight = (count: number): Shape => ({
  kind: 'straight',
  count,
  start: [0, 0],
  pitchMillimetres: 10,
  directionDegrees: 0,
});

const first = newPiece({
  name: 'Punt',
  board: 'host',
  part: 'ws2812b',
  limitMilliamps: 400,
  firstRun: { name: 'hull', shape: straight(9) },
});
/** Nine pixels with 3 cut out and 4 dark, then six. */
const punt: Piece = {
  ...first,
  lines: [
    {
      ...first.lines[0]!,
      runs: [
        { ...first.lines[0]!.runs[0]!, removed: [3], hidden: [4] },
        { name: 'oar', flat: straight(6), removed: [], hidden: [] },
      ],
    },
  ],
};

const of = (run: string, ...positions: number[]): PixelOfRun[] =>
  positions.map((position) => ({ run, position }));
const hull: ZoneSource = { kind: 'run', run: 'hull' };
const oar: ZoneSource = { kind: 'run', run: 'oar' };
const range = (run: string, from: number, to: number): ZoneSource => ({
  kind: 'range',
  run,
  first: from,
  last: to,
});
const stepped = (source: ZoneSource, every: number, offset = 0): ZoneSource => ({
  kind: 'stepped',
  of: source,
  every,
  offset,
});
const union = (...parts: ZoneSource[]): ZoneSource => ({ kind: 'union', of: parts });

describe('O7 the source of chosen pixels', () => {
  const examples: readonly [name: string, pixels: PixelOfRun[], source: ZoneSource | undefined][] = [
    ['nothing', [], undefined],
    ['only what no zone may have', [...of('hull', 3, 4, 9), ...of('weir', 0)], undefined],
    ['a whole run', of('oar', 0, 1, 2, 3, 4, 5), oar],
    ['a whole run, as far as it can be seen', of('hull', 0, 1, 2, 5, 6, 7, 8), hull],
    ['one pixel', of('hull', 5), range('hull', 5, 5)],
    ['a range across a gap', of('hull', 1, 2, 5, 6), range('hull', 1, 6)],
    ['a gap that was chosen too', of('hull', 1, 2, 3, 4, 5, 6), range('hull', 1, 6)],
    ['every second', of('oar', 0, 2, 4), stepped(oar, 2)],
    ['every second from the second on', of('oar', 1, 3, 5), stepped(oar, 2, 1)],
    ['every second of a part', of('oar', 1, 3), stepped(range('oar', 1, 3), 2)],
    ['every third, counted without the gap', of('hull', 0, 5, 8), stepped(hull, 3)],
    ['a loner and a range', of('oar', 0, 2, 3, 4), union(range('oar', 0, 0), range('oar', 2, 4))],
    [
      'a run and a part of another',
      [...of('oar', 1, 2), ...of('hull', 0, 1, 2, 5, 6, 7, 8)],
      union(hull, range('oar', 1, 2)),
    ],
    ['everything', [...of('hull', 0, 1, 2, 5, 6, 7, 8), ...of('oar', 0, 1, 2, 3, 4, 5)], { kind: 'all' }],
    ['every fourth of everything', [...of('hull', 1, 7), ...of('oar', 2)], stepped({ kind: 'all' }, 4, 1)],
    ['one that is named twice', of('oar', 3, 3), range('oar', 3, 3)],
  ];
  it.each(examples)('%s', (_, pixels, source) => {
    expect(sourceOfPixels(punt, pixels)).toEqual(source);
  });

  it('numbers them as they were chosen, on request', () => {
    expect(sourceOfPixels(punt, of('oar', 4, 3, 2), 'given')).toEqual(range('oar', 4, 2));
    expect(sourceOfPixels(punt, of('oar', 5, 3, 1), 'given')).toEqual(stepped(range('oar', 5, 1), 2));
    expect(sourceOfPixels(punt, [...of('oar', 4, 1), ...of('hull', 7, 2)], 'given')).toEqual({
      kind: 'reversed',
      of: stepped({ kind: 'all' }, 3, 2),
    });
    expect(sourceOfPixels(punt, [...of('oar', 0, 1), ...of('hull', 0)], 'given')).toEqual(
      union(range('oar', 0, 1), range('hull', 0, 0)),
    );
  });
});

/** Every pixel that a zone may have, with its address. */
function visible(piece: Piece): (PixelOfRun & { readonly address: number })[] {
  const runs = piece.lines.flatMap((line) => line.runs);
  return sound(prepareLayout(piece))
    .pixels.map(({ run, position, hidden }, address) => ({ run: runs[run]!.name, position, hidden, address }))
    .filter(({ hidden }) => !hidden);
}

/** The addresses in the zone that an edit adds, by index. */
function addressesOf(piece: Piece, source: ZoneSource): number[] {
  const add = newZone(piece, source, 'chosen');
  const after = sound(applyEdit(piece, add)).piece;
  const { entries } = sound(prepareLayout(after)).zones.get(add.zone.name)!;
  expect(entries.map(({ index }) => index)).toEqual(entries.map((_, i) => i));
  return entries.map(({ pixel }) => pixel);
}

describe('O7 for any piece', () => {
  const seeds = fc.integer({ min: 0, max: 3000 });

  it('any choice in any order comes back as that choice', () => {
    fc.assert(
      fc.property(seeds, fc.infiniteStream(fc.nat()), fc.boolean(), (seed, stream, isGiven) => {
        const piece = generated(seed);
        const keys = new Map(visible(piece).map((pixel) => [pixel, stream.next().value as number]));
        const chosen = [...keys.keys()]
          .filter((pixel) => keys.get(pixel)! % 3 > 0)
          .sort((a, b) => keys.get(a)! - keys.get(b)!);
        fc.pre(chosen.length > 0);
        const addresses = chosen.map(({ address }) => address);
        const source = sourceOfPixels(piece, chosen, isGiven ? 'given' : 'wire')!;
        expect(addressesOf(piece, source)).toEqual(isGiven ? addresses : addresses.sort((a, b) => a - b));
      }),
      { seed: 2710, numRuns: 60 },
    );
  });

  it('the pixels of its own zones come back in the order of their indices, in no more words', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const piece = generated(seed);
        const layout = sound(prepareLayout(piece));
        const byAddress = new Map(visible(piece).map((pixel) => [pixel.address, pixel]));
        for (const { name, source } of piece.zones) {
          const addresses = layout.zones.get(name)!.entries.map(({ pixel }) => pixel);
          const pixels = addresses.map((address) => byAddress.get(address)!);
          const again = sourceOfPixels(piece, pixels, 'given')!;
          expect(addressesOf(piece, again)).toEqual(addresses);
          if (isPlain(source)) expect(wordsIn(again)).toBeLessThanOrEqual(wordsIn(source));
        }
      }),
      { seed: 2711, numRuns: 150 },
    );
  });

  it('a choice of many loners is a union that a file may hold', () => {
    const long = newPiece({
      name: 'Weir',
      board: 'host',
      part: 'ws2812b',
      limitMilliamps: 20_000,
      firstRun: { name: 'net', shape: straight(2000) },
    });
    const positions = Array.from({ length: 2000 }, (_, i) => i).filter(
      (i) => Number.isInteger(Math.sqrt(i)) || i % 7 === 3 || i % 11 === 5,
    );
    const source = sourceOfPixels(long, of('net', ...positions))!;
    expect(addressesOf(long, source)).toEqual(positions);
    expect(wordsIn(source)).toBeGreaterThan(256);
  });
});

/** What a source is made of, unions left out. */
function wordsIn(source: ZoneSource): number {
  if (source.kind === 'union' || source.kind === 'twins') {
    return source.of.reduce((sum, part) => sum + wordsIn(part), 0);
  }
  return source.kind === 'stepped' || source.kind === 'reversed' ? 1 + wordsIn(source.of) : 1;
}

/** Whether a source steps through runs or ranges alone, or from end to end through all there is. */
function isPlain(source: ZoneSource): boolean {
  if (source.kind === 'union') return source.of.every(isPlain);
  if (source.kind !== 'stepped' && source.kind !== 'reversed') return source.kind !== 'twins';
  if (source.of.kind === 'all') return source.kind === 'reversed' || source.offset < source.every;
  return source.of.kind === 'run' || source.of.kind === 'range';
}
