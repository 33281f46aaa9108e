/** Places that dragged things find: legal, and the nearest there are, against trying all of them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { fitClip } from '../../engine/edit/snap/fit-clip.ts';
import { fitEdge } from '../../engine/edit/snap/fit-edge.ts';
import { fitKey } from '../../engine/edit/snap/fit-key.ts';
import { snapDegrees, snapPoint } from '../../engine/edit/snap/snap-plane.ts';
import { edgesOf, snapClip, snapTime } from '../../engine/edit/snap/snap-time.ts';
import { clip as clipSchema } from '../../engine/piece/schema/look.ts';
import type { Clip, Look, Piece } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';

const runs = { seed: 20260626, numRuns: 300 };
const lookLength = 400;

const clipOf = (startMilliseconds: number, lengthMilliseconds: number, endless = false): Clip =>
  clipSchema.parse({ pattern: 'still/1', startMilliseconds, lengthMilliseconds, endless });

/** Up to four clips that do not meet, the last one endless now and then, listed in any order. */
const track = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 20, max: 90 })), { maxLength: 4 }),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([steps, endless, backwards]) => {
    let from = 0;
    const clips: Clip[] = [];
    for (const [gap, length] of steps) {
      if (from + gap + length > lookLength) break;
      clips.push(clipOf(from + gap, length));
      from += gap + length;
    }
    const last = clips.at(-1);
    if (endless && last !== undefined) last.endless = true;
    return backwards ? clips.reverse() : clips;
  });

function pieceOf(clips: Clip[]): Piece {
  return pieceWith({ looks: [{ name: 'Ebb', lengthMilliseconds: lookLength, tracks: [{ clips }] }] });
}

const lookOf = (piece: Piece): Look => piece.looks[0]!;
const at = (clip: number) => ({ look: 'Ebb', track: 0, clip });

describe('S1 a dragged clip', () => {
  it('comes down at the nearest start that the piece accepts, or nowhere if it accepts none', () => {
    fc.assert(
      fc.property(
        track,
        fc.integer({ min: 20, max: 150 }),
        fc.integer({ min: -50, max: 450 }),
        (clips, length, wanted) => {
          const piece = pieceOf(clips);
          const fit = fitClip(lookOf(piece), 0, { ...clipOf(0, length), startMilliseconds: wanted });
          const legal = starts.filter((start) => accepts(piece, clipOf(start, length)));
          const distances = legal.map((start) => Math.abs(start - wanted));
          if (fit === undefined) expect(legal).toEqual([]);
          else {
            expect(legal).toContain(fit);
            expect(Math.abs(fit - wanted)).toBe(Math.min(...distances));
          }
        },
      ),
      { ...runs, numRuns: 40 },
    );
  });

  it('is not in its own way', () => {
    fc.assert(
      fc.property(track, fc.nat({ max: 3 }), fc.integer({ min: 0, max: 400 }), (clips, index, wanted) => {
        const clip = clips[index];
        if (clip === undefined) return;
        const piece = pieceOf(clips);
        expect(fitClip(lookOf(piece), 0, clip, index)).toBe(clip.startMilliseconds);
        const start = fitClip(lookOf(piece), 0, { ...clip, startMilliseconds: wanted }, index)!;
        const move = { kind: 'move-clip', at: at(index), to: at(index), startMilliseconds: start } as const;
        expect(applyEdit(piece, move).value).toBeDefined();
      }),
      runs,
    );
  });

  it('that is endless comes behind all others, and behind no other endless one', () => {
    const look = lookOf(pieceOf([clipOf(100, 50)]));
    const endless = { startMilliseconds: 20, lengthMilliseconds: 30, endless: true };
    expect(fitClip(look, 0, endless)).toBe(150);
    expect(fitClip(look, 0, { ...endless, startMilliseconds: 290 })).toBe(290);
    expect(fitClip(lookOf(pieceOf([clipOf(100, 50, true)])), 0, endless)).toBeUndefined();
    expect(fitClip(look, 7, endless)).toBeUndefined();
  });
});

describe('S2 a pulled edge', () => {
  it('stops at neighbours, at the look and at the shortest clip; the other edge stays', () => {
    fc.assert(
      fc.property(
        track,
        fc.nat({ max: 3 }),
        fc.constantFrom('start' as const, 'end' as const),
        fc.integer({ min: -50, max: 450 }),
        (clips, index, edge, wanted) => {
          const clip = clips[index];
          if (clip === undefined) return;
          const piece = pieceOf(clips);
          const extent = fitEdge(lookOf(piece), { track: 0, clip: index }, edge, wanted)!;
          expect(applyEdit(piece, { kind: 'trim-clip', at: at(index), ...extent }).value).toBeDefined();
          const end = clip.startMilliseconds + clip.lengthMilliseconds;
          if (edge === 'start') expect(extent.startMilliseconds + extent.lengthMilliseconds).toBe(end);
          else expect(extent.startMilliseconds).toBe(clip.startMilliseconds);
        },
      ),
      runs,
    );
  });

  it('goes where it is wanted if that is free', () => {
    const look = lookOf(pieceOf([clipOf(0, 50), clipOf(100, 50), clipOf(300, 50)]));
    const middle = { track: 0, clip: 1 };
    expect(fitEdge(look, middle, 'start', 70)).toEqual({ startMilliseconds: 70, lengthMilliseconds: 80 });
    expect(fitEdge(look, middle, 'start', 10)).toEqual({ startMilliseconds: 50, lengthMilliseconds: 100 });
    expect(fitEdge(look, middle, 'end', 999)).toEqual({ startMilliseconds: 100, lengthMilliseconds: 200 });
    expect(fitEdge(look, middle, 'end', 101)).toEqual({ startMilliseconds: 100, lengthMilliseconds: 20 });
    expect(fitEdge(look, { track: 0, clip: 9 }, 'end', 101)).toBeUndefined();
  });
});

describe('S3 a dragged key', () => {
  it('comes down at the nearest free time', () => {
    const course = [0, 10, 11, 12].map((atMilliseconds) => ({
      atMilliseconds,
      value: 1,
      easing: 'linear' as const,
    }));
    expect(fitKey(course, 5)).toBe(5);
    expect(fitKey(course, 11)).toBe(9);
    expect(fitKey(course, 12)).toBe(13);
    expect(fitKey(course, -7)).toBe(1);
    expect(fitKey(course, 11, 2)).toBe(11);
    expect(fitKey(course, 1e12)).toBe(9 * 3600 * 1000);
  });
});

describe('S4 snapping', () => {
  it('takes the nearest target within reach, else the whole millisecond', () => {
    expect(snapTime(103.4, [0, 100, 110], 5)).toBe(100);
    expect(snapTime(106, [0, 100, 110], 5)).toBe(110);
    expect(snapTime(50.6, [0, 100], 5)).toBe(51);
    expect(snapTime(50.6, [], 5)).toBe(51);
  });

  it('finds the edges of all other clips, and both ends of the look', () => {
    const look = lookOf(pieceOf([clipOf(100, 50), clipOf(300, 100)]));
    expect(edgesOf(look, { track: 0, clip: 0 })).toEqual([0, 300, 400]);
    expect(edgesOf(look)).toEqual([0, 100, 150, 300, 400]);
  });

  it('lets a clip snap with either end', () => {
    expect(snapClip(98, 60, [100, 300], 5)).toBe(100);
    expect(snapClip(238, 60, [100, 300], 5)).toBe(240);
    expect(snapClip(200, 60, [100, 300], 5)).toBe(200);
    // Both ends in reach: the one that is nearer to its target.
    expect(snapClip(97, 60, [100, 158], 5)).toBe(98);
  });

  it('puts points on a grid and angles on steps, or leaves them', () => {
    expect(snapPoint([12.4, -2.4], 5)).toEqual([10, 0]);
    expect(snapPoint([12.4, -2.4], 0)).toEqual([12.4, -2.4]);
    expect(snapDegrees(52, 15)).toBe(45);
    expect(snapDegrees(52, 0)).toBe(52);
  });
});

const starts = Array.from({ length: lookLength + 1 }, (_, start) => start);

function accepts(piece: Piece, clip: Clip): boolean {
  return applyEdit(piece, { kind: 'add-clip', at: at(0), clip }).value !== undefined;
}
