/** First answers, work that is kept, and what figures are made of. Rules: app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestPixel } from '../../app/web/picture/nearest.ts';
import { pixelWords } from '../../app/web/picture/pixel-words.ts';
import { drop, keep, type Shelf, tabsWithWork, take } from '../../app/web/session/keeping.ts';
import { sinceWords } from '../../app/web/session/when.ts';
import { arrived, isUnsaved } from '../../app/web/session/works.ts';
import { lightShares, restShares, totalOf } from '../../app/web/shell/figures/shares.ts';
import { mendingPlace } from '../../app/web/shell/mend.ts';
import {
  type Answers,
  densities,
  firstAnswers,
  firstPiece,
  fullMilliamps,
  lightKinds,
  pixelCount,
  usualAnswers,
  withSupply,
} from '../../app/web/start/answers.ts';
import { supplies, supplyKinds } from '../../app/web/start/supplies.ts';
import { spotlitPixels, spotlitScore } from '../../app/web/worker/spotlight.ts';
import { viewOf } from '../../app/web/worker/view.ts';
import { record, startWork, undo } from '../../engine/edit/history.ts';
import { pixelPlaces } from '../../engine/layout/shapes.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import { chipNames } from '../../engine/parts/chips.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import { newPiece } from '../../engine/piece/new-piece.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const seed = 20261125;

const anyAnswers: fc.Arbitrary<Answers> = fc.record({
  name: fc.constantFrom('Lantern', 'My first light'),
  light: fc.constantFrom(...lightKinds),
  part: fc.constant('ws2812b' as const),
  perMetre: fc.constantFrom(...densities),
  metres: fc.double({ min: 0.005, max: 13, noNaN: true }),
  around: fc.integer({ min: 1, max: 300 }),
  diameterMillimetres: fc.integer({ min: 10, max: 2000 }),
  columns: fc.integer({ min: 1, max: 20 }),
  rows: fc.integer({ min: 1, max: 20 }),
  loose: fc.integer({ min: 1, max: 100 }),
  board: fc.constantFrom(...chipNames),
  supply: fc.constantFrom(...supplyKinds),
  milliamps: fc.integer({ min: 50, max: 20_000 }),
});

describe('H1 first answers', () => {
  test('whatever they are, they give the piece of the engine, and it can be played', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const piece = firstPiece(answers);
        expect({ ...piece, supply: { ...piece.supply, volts: 5 } }).toEqual(newPiece(firstAnswers(answers)));
        const checked = checkPiece(piece);
        expect(checked.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(prepareScore(checked.value!).value?.pixels).toHaveLength(pixelCount(answers));
      }),
      { seed, numRuns: 60 },
    );
  });

  test('the first run lies around the middle of the bench', () => {
    for (const light of lightKinds) {
      const places = pixelPlaces(firstPiece({ ...usualAnswers, light }).lines[0]!.runs[0]!.flat);
      const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
      expect(middle(places.map(({ x }) => x))).toBeCloseTo(0, 6);
      expect(middle(places.map(({ y }) => y))).toBeCloseTo(0, 6);
    }
  });

  test('a strip is as long as it is told, at the densities of the trade', () => {
    const strip: Answers = { ...usualAnswers, light: 'strip', metres: 2 };
    expect(densities.map((perMetre) => pixelCount({ ...strip, perMetre }))).toEqual([60, 120, 192, 288]);
  });

  test('a port gives what USB 2.0 says, section 7.2.1: five unit loads of 100 mA', () => {
    expect(supplies.usb.milliamps).toBe(5 * 100);
  });

  test('a power bank is kept awake, and its caution stands beside it', () => {
    const bank = firstPiece(withSupply(usualAnswers, 'bank'));
    // IP5306 datasheet: load taken for removed under 45 mA; others up to 60 mA, from memory.
    expect(bank.supply.keepAliveMilliamps).toBeGreaterThan(60);
    for (const kind of ['bank', 'lithium'] as const)
      expect(supplies[kind].cautions).toContain('lithium-cells');
  });

  test('at full white every pixel draws three channels and its rest, by the datasheets', () => {
    // WS2812: 20 mA a channel; 0.7 mA at rest, measured; ATmega328P at 16 MHz: 10.4 mA.
    expect(fullMilliamps(usualAnswers)).toBeCloseTo(24 * (3 * 20 + 0.7) + 10.4, 6);
  });
});

/** A store as browsers have it, with room for so many characters. */
function shelfOf(room = 1_000_000): Shelf {
  const books = new Map<string, string>();
  return {
    get length() {
      return books.size;
    },
    key: (at) => [...books.keys()][at] ?? null,
    getItem: (key) => books.get(key) ?? null,
    removeItem: (key) => void books.delete(key),
    setItem(key, text) {
      if (text.length > room) throw new DOMException('full', 'QuotaExceededError');
      books.set(key, text);
    },
  };
}

const hat = samplePiece('ferrymans-hat');
const edited = record(startWork(hat), { kind: 'set-piece', set: { name: 'Ferry' } }).value!;

describe('H2 work that is kept', () => {
  test('comes back with its steps', () => {
    const shelf = shelfOf();
    expect(keep(shelf, 'a', edited, true, 1000)).toBe(true);
    const kept = take(shelf, 'a')!;
    expect(kept).toMatchObject({ at: 1000, unsaved: true, history: edited.history });
    const piece = checkPiece(JSON.parse(kept.text)).value!;
    expect(piece).toEqual(edited.piece);
    const works = arrived(piece, { origin: 'kept', history: kept.history, unsaved: kept.unsaved });
    expect(isUnsaved(works)).toBe(true);
    expect(undo(works.shown).value!.piece).toEqual(hat);
  });

  test('comes back without its steps where there is too little room for them', () => {
    let work = startWork(hat);
    for (let i = 0; i < 40; i++)
      work = record(work, { kind: 'set-piece', set: { name: `Ferry ${i}` } }).value!;
    const room = JSON.stringify(work.piece).length + 300;
    const shelf = shelfOf(room);
    expect(keep(shelf, 'a', work, true, 1)).toBe(true);
    expect(take(shelf, 'a')).toMatchObject({ unsaved: true, history: { done: [] } });
    expect(keep(shelfOf(10), 'a', work, true, 1)).toBe(false);
  });

  test('of other tabs is found if it is in no file, the latest first', () => {
    const shelf = shelfOf();
    keep(shelf, 'old', edited, true, 10);
    keep(shelf, 'new', edited, true, 20);
    keep(shelf, 'saved', edited, false, 30);
    expect(tabsWithWork(shelf)).toEqual(['new', 'old']);
    drop(shelf, 'new');
    expect(tabsWithWork(shelf)).toEqual(['old']);
  });

  test('that cannot be read is none', () => {
    for (const text of ['', '{', '[]', '{"at": 3}', '{"at": 3, "piece": null}']) {
      const shelf = shelfOf();
      shelf.setItem('weftlight kept a', text);
      expect(take(shelf, 'a'), text).toBe(null);
    }
    const shelf = shelfOf();
    shelf.setItem('weftlight kept a', JSON.stringify({ at: 1, piece: {}, history: { done: 3 } }));
    expect(take(shelf, 'a')!.history.done).toEqual([]);
  });

  test('is told by the time of day, or by its day', () => {
    const now = new Date(2026, 10, 25, 15, 0);
    const since = (...at: [number, number, number, number]) => sinceWords(new Date(...at), now);
    expect(since(2026, 10, 25, 9)).toBe('this morning');
    expect(since(2026, 10, 25, 14)).toBe('this afternoon');
    expect(since(2026, 10, 24, 23)).toBe('yesterday');
    expect(since(2026, 10, 3, 23)).toBe('3 November');
    expect(since(2025, 2, 3, 23)).toBe('3 March 2025');
  });
});

test('H5 the shares of a frame add up to what the engine says it draws', () => {
  for (const name of ['ferrymans-hat', 'jellyfish-parasol', 'moth-wings']) {
    const score = scoreOf(samplePiece(name));
    const { drive, milliamps } = frame(score, stillMoment(0, 1500, 64));
    const view = viewOf(score);
    const shares = [...restShares(score.piece, view.hidden.length), ...lightShares(score.piece, view, drive)];
    expect(totalOf(shares)).toBeCloseTo(milliamps, 6);
    expect(shares).toHaveLength(5);
  }
});

test('H6 a warning leads to where it can be mended', () => {
  expect(mendingPlace({ code: 'limiter-active' })).toEqual({ kind: 'supply' });
  expect(mendingPlace({ code: 'any', path: 'supply.volts' })).toEqual({ kind: 'supply' });
  expect(mendingPlace({ code: 'any', path: 'looks[2].tracks[0].clips[1].fadeOutMilliseconds' })).toEqual({
    kind: 'look',
    look: 2,
    clip: { look: 2, track: 0, clip: 1 },
  });
  expect(mendingPlace({ code: 'any', path: 'looks[0].name' })).toEqual({ kind: 'look', look: 0, clip: null });
  expect(mendingPlace({ code: 'any', path: 'lines[0].runs[3]' })).toEqual({ kind: 'bench', bench: 'place' });
  expect(mendingPlace({ code: 'any', path: 'name' })).toBe(null);
});

test('H8 the pixel under a hand is the nearest one in reach, and is named by run and position', () => {
  const spots = Float32Array.of(10, 10, 30, 10, 50, 10);
  expect(nearestPixel(spots, 27, 14, 20)).toBe(1);
  expect(nearestPixel(spots, 100, 100, 20)).toBe(null);
  const view = viewOf(scoreOf(hat));
  expect(pixelWords(hat, view, 5)).toBe('brim, pixel 5');
  expect(pixelWords(hat, view, 36)).toBe('badge, pixel 0 (36 on the line)');
  expect(pixelWords(hat, view, 5000)).toBe(null);
});

test('H9 a track by itself shines alone, a zone has its own pixels', () => {
  const score = scoreOf(samplePiece('jellyfish-parasol'));
  const solo = spotlitScore(score, { track: 0 });
  for (const [i, look] of solo.looks.entries()) {
    expect(look.clips).toEqual(score.looks[i]!.clips.filter(({ track }) => track === 0));
  }
  expect(spotlitScore(score, { zone: 'rim' })).toBe(score);
  expect([...spotlitPixels(score, { zone: 'rim' })!]).toEqual(
    [...score.pixels.keys()].filter((pixel) => score.pixels[pixel]!.run === 0),
  );
  expect(spotlitPixels(score, { zone: 'nowhere' })).toBe(null);
  expect(spotlitPixels(score, { track: 0 })).toBe(null);
});
