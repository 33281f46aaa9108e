/** The loom as a whole, without a browser: its length, its scale, its tracks, its columns. Rules: app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rankAfter } from '../../app/web/loom/edit-tracks.ts';
import { longestLook, pulledLength, shortestLook } from '../../app/web/loom/look-length.ts';
import { isScattered } from '../../app/web/loom/scattered.ts';
import { mostZoom, scrollAbout, zoomOfWheel } from '../../app/web/loom/zoom.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { changeLength } from '../../engine/edit/offers/length.ts';
import { samplePiece } from './browser/samples.ts';

const parasol = samplePiece('jellyfish-parasol');
const look = parasol.looks[0]!;
const ends = look.tracks.flatMap(({ clips }) =>
  clips.map((clip) => clip.startMilliseconds + clip.lengthMilliseconds),
);

describe('M12 the lower end of a look', () => {
  test('comes to lie on ends of clips and on whole seconds within reach, else on round figures', () => {
    const [end] = ends;
    expect(pulledLength(look, end! + 90, 100)).toBe(end);
    expect(pulledLength(look, 7_060, 100)).toBe(7_000);
    expect(pulledLength(look, 7_432, 100)).toBe(7_400);
    expect(pulledLength(look, 7_432, 0)).toBe(7_432);
  });

  test('goes no further than a file allows, and the piece stays sound', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (wanted, reach) => {
          const length = pulledLength(look, wanted, reach);
          expect(Number.isInteger(length)).toBe(true);
          expect(length).toBeGreaterThanOrEqual(shortestLook);
          expect(length).toBeLessThanOrEqual(longestLook);
          const edit = changeLength(parasol, look.name, length).value!;
          const after = applyEdit(parasol, edit).value!.piece.looks[0]!;
          expect(after.lengthMilliseconds).toBe(length);
        },
      ),
      { seed: 71, numRuns: 120 },
    );
  });
});

describe('M13 the scale of time', () => {
  test('stays between the whole look and the largest, and the wheel leads back to the whole', () => {
    expect(zoomOfWheel(1, 100)).toBe(1);
    expect(zoomOfWheel(1, -100)).toBeCloseTo(1.25, 9);
    expect(zoomOfWheel(zoomOfWheel(1, -100), 100)).toBe(1);
    expect(zoomOfWheel(mostZoom, -400)).toBe(mostZoom);
  });

  test('keeps the moment under the hand', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 600, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        (scrolled, inView, zoom, larger) => {
          const handY = scrolled + inView;
          const next = zoom * larger;
          const moment = handY / zoom;
          expect(moment * next - scrollAbout(scrolled, handY, zoom, next)).toBeCloseTo(inView, 6);
        },
      ),
      { seed: 72 },
    );
  });
});

describe('M14 tracks that change places', () => {
  const edits: Edit[] = [
    { kind: 'reorder-track', at: { look: look.name, track: 0 }, to: 2 },
    { kind: 'reorder-track', at: { look: look.name, track: 2 }, to: 1 },
    { kind: 'remove-track', at: { look: look.name, track: 1 } },
    { kind: 'add-track', at: { look: look.name, track: 1 }, track: { clips: [] } },
  ];

  test.each(edits)('are found again behind $kind, as the engine has them', (edit) => {
    const after = applyEdit(parasol, edit).value!.piece.looks[0]!.tracks;
    expect(look.tracks).toHaveLength(3);
    for (const [rank, track] of look.tracks.entries()) {
      const now = after.indexOf(track);
      expect(rankAfter(edit, rank)).toBe(now < 0 ? null : now);
    }
  });
});

describe('M15 columns go by place where the wiring jumps about', () => {
  const line = Array.from({ length: 40 }, (_, i) => [i * 10, 0]).flat();
  const inOrder = Array.from({ length: 40 }, (_, i) => i);
  const toAndFro = inOrder.map((i) => (i % 2 === 0 ? i / 2 : 39 - (i - 1) / 2));

  test('a strip, either way round, is read as it is wired', () => {
    expect(isScattered(inOrder, line)).toBe(false);
    expect(isScattered([...inOrder].reverse(), line)).toBe(false);
  });

  test('a grid wired in a snake, and strips one after the other, are no more scattered than they look', () => {
    const snake = inOrder.flatMap((i) => {
      const [row, column] = [Math.floor(i / 8), i % 8];
      return [(row % 2 === 0 ? column : 7 - column) * 10, row * 10];
    });
    const strips = inOrder.flatMap((i) => [Math.floor(i / 10) * 300, (i % 10) * 10]);
    expect(isScattered(inOrder, snake)).toBe(false);
    expect(isScattered(inOrder, strips)).toBe(false);
  });

  test('pixels wired to and fro are scattered; a handful of them, or all in one place, are not', () => {
    expect(isScattered(toAndFro, line)).toBe(true);
    expect(isScattered([0, 30, 5, 39], line)).toBe(false);
    expect(isScattered(inOrder, new Array(80).fill(0))).toBe(false);
  });
});
