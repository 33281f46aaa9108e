/** Pulling at clips, their keys, and the columns of cloths. Rules M of app/web/SPEC.md. */
import { describe, expect, it } from 'vitest';
import { clipKey } from '../../app/web/loom/clip-keys.ts';
import { clipAgain, clipPasted } from '../../app/web/loom/clip-tasks.ts';
import { type Grip, type Pull, pullClip } from '../../app/web/loom/grip.ts';
import { orderedByPlace } from '../../app/web/loom/order.ts';
import { wantedOnTrack } from '../../app/web/loom/wanted.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { newClip, newLook } from '../../engine/piece/blank.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Clip, Piece } from '../../engine/piece/schema.ts';

/** Eight seconds: on the lower track still/1 from 1 to 3 s and tide/1 from 5 to 8 s, the upper one is empty. */
const piece: Piece = checkPiece({
  version: 2,
  name: 'Quay lamp',
  board: 'atmega328p',
  lines: [
    {
      pin: 6,
      part: 'ws2812b',
      runs: [
        {
          name: 'rail',
          flat: { kind: 'straight', count: 12, start: [0, 0], pitchMillimetres: 10 },
          removed: [],
          hidden: [],
        },
      ],
    },
  ],
  looks: [
    {
      ...newLook('Quay'),
      tracks: [
        {
          clips: [
            { ...clipOf('still/1', 1000, 2000), fadeInMilliseconds: 500 },
            clipOf('tide/1', 5000, 3000),
          ],
        },
        { clips: [] },
      ],
    },
    { ...newLook('Short'), lengthMilliseconds: 1500 },
  ],
}).value!;

function clipOf(pattern: string, startMilliseconds: number, lengthMilliseconds: number): Clip {
  return newClip({ pattern, zone: 'all', startMilliseconds, lengthMilliseconds });
}

const first = { look: 'Quay', track: 0, clip: 0 };
const reach = 100;

function pieceAfter(edit: Edit): Piece {
  const { value, diagnostics } = applyEdit(piece, edit);
  expect(diagnostics).toEqual([]);
  return value!.piece;
}

/** The clip after a pull, and the time it snapped to. */
function pulled(grip: Grip, pull: Pull) {
  const { edit, at, snapped } = pullClip(piece, first, grip, pull)!;
  const { tracks } = pieceAfter(edit).looks[0]!;
  const { startMilliseconds: start, lengthMilliseconds: length, ...clip } = tracks[at.track]!.clips[at.clip]!;
  return { track: at.track, start, end: start + length, snapped, clip };
}

describe('M1 a clip that is pulled', () => {
  it('comes to lie on whole seconds, edges and the playhead when it is near, else on round figures', () => {
    expect(pulled('whole', { by: 930, reach })).toMatchObject({ start: 2000, end: 4000, snapped: 2000 });
    expect(pulled('whole', { by: 472, reach })).toMatchObject({ start: 1450, snapped: null });
    expect(pulled('whole', { by: 510, reach, playhead: 3480 })).toMatchObject({ start: 1480, snapped: 3480 });
  });

  it('lies anywhere where nothing is to be snapped to', () => {
    expect(pulled('whole', { by: 937, reach: 0 })).toMatchObject({ start: 1937, snapped: null });
  });

  it('stays clear of its neighbours and of the ends of the look', () => {
    expect(pulled('whole', { by: 2800, reach })).toMatchObject({ start: 3000, end: 5000, snapped: 3000 });
    expect(pulled('whole', { by: -9000, reach })).toMatchObject({ start: 0 });
  });

  it('goes to another track, where it has the same length and the rest of its values', () => {
    const there = pulled('whole', { by: 4000, track: 1, reach });
    expect(there).toMatchObject({ track: 1, start: 5000, end: 7000 });
    expect(there.clip).toMatchObject({ pattern: 'still/1', fadeInMilliseconds: 500 });
    expect(pullClip(piece, first, 'whole', { by: 0, track: 2, reach })).toBeNull();
  });

  it('is trimmed by its edges', () => {
    expect(pulled('start', { by: 990, reach })).toMatchObject({ start: 2000, end: 3000, snapped: 2000 });
    expect(pulled('end', { by: 9000, reach })).toMatchObject({ start: 1000, end: 5000 });
    expect(pulled('end', { by: -9000, reach }).end).toBeGreaterThan(1000);
  });

  it('is faded by its corners, over no more than its length', () => {
    expect(pulled('fade-in', { by: 480, reach })).toMatchObject({ clip: { fadeInMilliseconds: 1000 } });
    expect(pulled('fade-in', { by: -9000, reach })).toMatchObject({ clip: { fadeInMilliseconds: 0 } });
    expect(pulled('fade-out', { by: -700, reach })).toMatchObject({ clip: { fadeOutMilliseconds: 700 } });
    expect(pulled('fade-out', { by: -9000, reach })).toMatchObject({ clip: { fadeOutMilliseconds: 2000 } });
  });
});

describe('M2 keys do what pulling does', () => {
  const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false };

  it('reach every grip, both ways', () => {
    const keys = ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'i', 'I', 'o', 'O'];
    const ways = keys.flatMap((key) =>
      [plain, { ...plain, altKey: true }, { ...plain, altKey: true, shiftKey: true }].map((held) =>
        clipKey({ key, ...held }),
      ),
    );
    const grips = new Map<Grip, Set<number>>();
    for (const way of ways) {
      if (way?.kind !== 'pull') continue;
      grips.set(way.grip, (grips.get(way.grip) ?? new Set()).add(Math.sign(way.by)));
    }
    expect([...grips.keys()].sort()).toEqual(['end', 'fade-in', 'fade-out', 'start', 'whole']);
    for (const signs of grips.values()) expect([...signs].sort()).toEqual([-1, 1]);
  });

  it('leave alone what belongs to the page', () => {
    for (const key of ['z', 's', 'v']) expect(clipKey({ key, ...plain, ctrlKey: true })).toBeNull();
    expect(clipKey({ key: 'Tab', ...plain })).toBeNull();
    expect(clipKey({ key: 'ArrowLeft', ...plain, altKey: true })).toBeNull();
  });
});

describe('M3 a clip laid once more, or from the clipboard', () => {
  it('lies behind itself where there is room', () => {
    const { edit, at } = clipAgain(piece, first)!;
    expect(at).toEqual({ look: 'Quay', track: 0, clip: 2 });
    expect(pieceAfter(edit).looks[0]!.tracks[0]!.clips[2]).toMatchObject({
      startMilliseconds: 3000,
      fadeInMilliseconds: 500,
    });
  });

  it('lies on a track of its own where there is none', () => {
    const { edit, at } = clipPasted(piece, 'Quay', 0, clipOf('dew/1', 0, 6000), 4000)!;
    expect(at).toEqual({ look: 'Quay', track: 1, clip: 0 });
    const [lower, between, upper] = pieceAfter(edit).looks[0]!.tracks;
    expect([lower, upper]).toEqual(piece.looks[0]!.tracks);
    expect(between!.clips).toMatchObject([{ startMilliseconds: 2000, lengthMilliseconds: 6000 }]);
  });

  it('is cut where the look is shorter', () => {
    const { edit } = clipPasted(piece, 'Short', 0, clipOf('dew/1', 0, 6000), 700)!;
    expect(pieceAfter(edit).looks[1]!.tracks[0]!.clips).toMatchObject([
      { startMilliseconds: 0, lengthMilliseconds: 1500 },
    ]);
  });
});

describe('M4 a swatch that is let go of over a track', () => {
  const look = piece.looks[0]!;

  it('begins at the start when it was dropped near it, else at half seconds', () => {
    expect(wantedOnTrack(look, 1, 'dew/1', 0.04).atMilliseconds).toBe(0);
    expect(wantedOnTrack(look, 1, 'dew/1', 0.44).atMilliseconds).toBe(3500);
    expect(wantedOnTrack(look, 1, 'dew/1', 1).atMilliseconds).toBe(7500);
  });

  it('plays on the pixels that the track plays on', () => {
    expect(wantedOnTrack(look, 1, 'dew/1', 0).zone).toBe('all');
    const clips = look.tracks[0]!.clips.map((clip) => ({ ...clip, zone: 'rail' }));
    expect(wantedOnTrack({ ...look, tracks: [{ clips }] }, 0, 'dew/1', 0).zone).toBe('rail');
  });
});

describe('M5 columns as placed', () => {
  it('go along the longer side, from left to right or from the top down', () => {
    const lying = Float32Array.from([30, 0, 10, 1, 20, 2]);
    expect([...orderedByPlace(Uint16Array.of(0, 1, 2), lying)]).toEqual([1, 2, 0]);
    const hanging = Float32Array.from([0, -30, 1, -10, 2, -20]);
    expect([...orderedByPlace(Uint16Array.of(0, 1, 2), hanging)]).toEqual([1, 2, 0]);
  });

  it('are the same pixels, and those at one place stay as wired', () => {
    const places = Float32Array.from([5, 0, 5, 0, 0, 0]);
    expect([...orderedByPlace(Uint16Array.of(1, 0, 2), places)]).toEqual([2, 0, 1]);
  });
});
