/** New clips, and where a look has room for them. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { type ClipWanted, layClip, placeForClip } from '../../engine/edit/offers/lay-clip.ts';
import { titleOf } from '../../engine/edit/titles.ts';
import { newPiece } from '../../engine/piece/new-piece.ts';
import type { Clip, Piece } from '../../engine/piece/schema.ts';
import { sound, textOf } from './pieces.ts';

const dark = newPiece({
  name: 'Lantern cap',
  board: 'host',
  part: 'ws2812b',
  limitMilliamps: 400,
  firstRun: {
    name: 'ring',
    shape: { kind: 'straight', count: 12, start: [0, 0], pitchMillimetres: 10, directionDegrees: 0 },
  },
});

const look = 'First light';

/** The piece after a clip was laid, once it is sure that the place was foretold and it can be taken back. */
function laid(piece: Piece, wanted: Partial<ClipWanted>): Piece {
  const whole = { look, pattern: 'tide/1', atMilliseconds: 0, ...wanted };
  const { piece: after, inverse } = sound(applyEdit(piece, layClip(piece, whole)));
  const { at, startMilliseconds, lengthMilliseconds } = placeForClip(piece, whole)!;
  expect(after.looks[0]!.tracks[at.track]!.clips[at.clip]).toMatchObject({
    pattern: whole.pattern,
    zone: whole.zone ?? 'all',
    startMilliseconds,
    lengthMilliseconds,
  });
  expect(textOf(sound(applyEdit(after, inverse)).piece)).toBe(textOf(piece));
  return after;
}

const times = ({ startMilliseconds: start, lengthMilliseconds: length, endless }: Clip) =>
  endless ? `${start}-` : `${start}-${start + length}`;
/** The tracks from the bottom up, with the clips of each: `0-4000 5000-8000`. */
const tracksOf = (piece: Piece) => piece.looks[0]!.tracks.map(({ clips }) => clips.map(times).join(' '));

describe('O8 a new clip', () => {
  it('fills the room of an empty track, from the moment on', () => {
    expect(tracksOf(laid(dark, {}))).toEqual(['0-8000']);
    expect(tracksOf(laid(dark, { atMilliseconds: 3000.4 }))).toEqual(['3000-8000']);
    expect(tracksOf(laid(dark, { atMilliseconds: 3000, lengthMilliseconds: 1000 }))).toEqual(['3000-4000']);
  });

  it('has the defaults of its pattern, and covers what lies below', () => {
    const clip = laid(dark, { zone: 'ring' }).looks[0]!.tracks[0]!.clips[0];
    expect(clip).toMatchObject({ zone: 'ring', parameters: {}, opacity: 255, blend: 'normal', seed: 0 });
  });

  it('of the same pattern plays another chance', () => {
    const piece = laid(laid(dark, { pattern: 'mist/1' }), { pattern: 'mist/1' });
    expect(piece.looks[0]!.tracks.map(({ clips }) => clips[0]!.seed)).toEqual([0, 1]);
  });

  it('comes down in the first gap that is left, and ends at the next clip', () => {
    const busy = laid(dark, { atMilliseconds: 2000, lengthMilliseconds: 2000 });
    expect(tracksOf(laid(busy, {}))).toEqual(['2000-4000 0-2000']);
    expect(tracksOf(laid(busy, { atMilliseconds: 1900 }))).toEqual(['2000-4000 4000-8000']);
    expect(tracksOf(laid(busy, { atMilliseconds: 2500 }))).toEqual(['2000-4000 4000-8000']);
  });

  it('gets a track of its own right above the one that has no room', () => {
    const full = laid(laid(dark, {}), {});
    expect(tracksOf(full)).toEqual(['0-8000', '0-8000']);
    expect(tracksOf(laid(full, { track: 0, atMilliseconds: 6000 }))).toEqual([
      '0-8000',
      '6000-8000',
      '0-8000',
    ]);
    expect(tracksOf(laid(full, { track: 'new', lengthMilliseconds: 700 }))).toEqual([
      '0-8000',
      '0-8000',
      '0-700',
    ]);
  });

  it('is never too short to be seen, even at the end of the look', () => {
    expect(tracksOf(laid(dark, { atMilliseconds: 7999 }))).toEqual(['', '7750-8000']);
    expect(tracksOf(laid(dark, { atMilliseconds: -5 }))).toEqual(['0-8000']);
    expect(tracksOf(laid(dark, { atMilliseconds: 90_000 }))).toEqual(['', '7750-8000']);
    const blink: Piece = { ...dark, looks: [{ ...dark.looks[0]!, lengthMilliseconds: 20 }] };
    expect(tracksOf(laid(blink, { atMilliseconds: 15 }))).toEqual(['', '0-20']);
  });

  it('lies beside an endless clip only before its start', () => {
    const [clip] = laid(dark, { atMilliseconds: 4000 }).looks[0]!.tracks[0]!.clips;
    const tracks = [{ clips: [{ ...clip!, endless: true }] }];
    const endless: Piece = { ...dark, looks: [{ ...dark.looks[0]!, tracks }] };
    expect(tracksOf(laid(endless, {}))).toEqual(['4000- 0-4000']);
    expect(tracksOf(laid(endless, { atMilliseconds: 5000 }))).toEqual(['4000-', '5000-8000']);
  });

  it('is the first of a look without tracks', () => {
    const bare: Piece = { ...dark, looks: [{ ...dark.looks[0]!, tracks: [] }] };
    expect(tracksOf(laid(bare, {}))).toEqual(['0-8000']);
  });

  it('is one step with the name of its pattern, on a new track too', () => {
    const full = laid(dark, {});
    const edit = layClip(full, { look, pattern: 'tide/1', atMilliseconds: 0 });
    expect([edit.kind, titleOf(edit, full)]).toEqual(['together', 'Add Tide']);
  });

  it.each([
    ['look-unknown', { look: 'Last light' }],
    ['place-unknown', { track: 7 }],
    ['pattern-unknown', { pattern: 'tied/1' }],
    ['zone-unknown', { zone: 'weir' }],
  ])('is refused: %s', (code, wanted) => {
    const edit = layClip(dark, { look, pattern: 'tide/1', atMilliseconds: 0, ...wanted });
    expect(applyEdit(dark, edit).diagnostics[0]!.code).toBe(code);
  });
});
