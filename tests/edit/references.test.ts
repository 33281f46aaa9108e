/** Names that are referred to: they follow a renaming, and are in the way of a removal. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit, SingleEdit } from '../../engine/edit/edit.ts';
import { removeLook, removePattern, removeRun, removeZone } from '../../engine/edit/offers/remove.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { frozen, sample, sound, textOf } from './pieces.ts';

const parasol = frozen(sample('jellyfish-parasol'));

const edited = (piece: Piece, edit: Edit): Piece => sound(applyEdit(piece, edit)).piece;
const refusal = (piece: Piece, edit: Edit) => {
  const { value, diagnostics } = applyEdit(piece, edit);
  expect(value).toBeUndefined();
  return diagnostics[0]!;
};
/** Labels of tracks and parameters are free, and may be the same words: they name nothing. */
const labels = (piece: Piece, name: string) =>
  [
    ...piece.looks.flatMap(({ tracks }) => tracks.map((track) => track.name)),
    ...piece.patterns.flatMap(({ parameters }) => parameters.map(({ label }) => label)),
  ].filter((label) => label === name).length;
/** How often a text stands in the file between quotes, as a name. */
const mentions = (piece: Piece, name: string) =>
  textOf(piece).split(JSON.stringify(name)).length - 1 - labels(piece, name);

describe('E4 renaming', () => {
  const renamings: readonly (readonly [what: string, name: string, edit: Edit])[] = [
    ['a run, in zones and on tracks', 'rim', { kind: 'rename-run', run: 'rim', name: 'brim' }],
    ['a run, deep in twins', 'tentacle 3', { kind: 'rename-run', run: 'tentacle 3', name: 'brim' }],
    ['a zone, on tracks', 'tentacles', { kind: 'rename-zone', zone: 'tentacles', name: 'brim' }],
    ['a pattern, on tracks', 'bell stroke', { kind: 'rename-pattern', pattern: 'bell stroke', name: 'brim' }],
    ['a look, in timers', 'Deep water', { kind: 'rename-look', look: 'Deep water', name: 'brim' }],
    ['a look, under buttons', 'Drift', { kind: 'rename-look', look: 'Drift', name: 'brim' }],
  ];

  it.each(renamings)('of %s, follows through the whole piece', (_, name, edit) => {
    const renamed = edited(parasol, edit);
    expect(mentions(parasol, name)).toBeGreaterThan(1);
    expect(mentions(renamed, name)).toBe(0);
    expect(mentions(renamed, 'brim')).toBe(mentions(parasol, name));
    expect(checkPiece(renamed).value).toEqual(renamed);
  });

  it('to a name that is taken is refused, also one of the other sort: a run is a zone as well', () => {
    const taken = ['tips', 'tentacle 1', 'all'];
    for (const name of taken) {
      expect(refusal(parasol, { kind: 'rename-run', run: 'rim', name }).code).toBe('name-twice');
    }
    expect(refusal(parasol, { kind: 'rename-zone', zone: 'tips', name: 'rim' }).code).toBe('name-twice');
  });

  it('takes the composed form of a name, as the file does', () => {
    const decomposed = 'Bru\u0308cke';
    const renamed = edited(parasol, { kind: 'rename-run', run: 'rim', name: decomposed });
    expect(renamed.lines[0]!.runs[0]!.name).toBe('Br\u00fccke');
    expect(renamed.looks[0]!.tracks[0]!.clips[0]!.zone).toBe('Br\u00fccke');
  });

  it('does not slip under a name that others wait for', () => {
    const edits: SingleEdit[] = [
      { kind: 'set-clip', at: { look: 'Drift', track: 0, clip: 0 }, set: { zone: 'brim' } },
      { kind: 'rename-zone', zone: 'tips', name: 'brim' },
    ];
    expect(refusal(parasol, { kind: 'together', name: 'Both', edits }).code).toBe('name-awaited');
    const inOrder = edited(parasol, { kind: 'together', name: 'Both', edits: [...edits].reverse() });
    expect(inOrder.looks[0]!.tracks[0]!.clips[0]!.zone).toBe('brim');
  });

  it('exchanges two names by way of a third', () => {
    const edits: SingleEdit[] = [
      { kind: 'rename-look', look: 'Drift', name: 'spare' },
      { kind: 'rename-look', look: 'Deep water', name: 'Drift' },
      { kind: 'rename-look', look: 'spare', name: 'Deep water' },
    ];
    const exchanged = edited(parasol, { kind: 'together', name: 'Exchange', edits });
    expect(mentions(exchanged, 'Drift')).toBe(mentions(parasol, 'Deep water'));
    expect(mentions(exchanged, 'Deep water')).toBe(mentions(parasol, 'Drift'));
  });
});

describe('E5 removing what is in use', () => {
  it('is refused, with the names of what uses it', () => {
    expect(refusal(parasol, { kind: 'remove-zone', zone: 'rising tentacles' })).toMatchObject({
      code: 'zone-in-use',
      message: expect.stringMatching(/^The zone "rising tentacles" is in use by the look "[^"]+"\.$/),
    });
    const ofRun = refusal(parasol, { kind: 'remove-run', run: 'rim' });
    expect(ofRun.code).toBe('run-in-use');
    expect(ofRun.message).toContain('the zone "rim lanterns" and the looks "Drift"');
    expect(refusal(parasol, { kind: 'remove-look', look: 'Drift' }).message).toBe(
      'The look "Drift" is in use by the button "ferrule".',
    );
    expect(refusal(parasol, { kind: 'remove-pattern', pattern: 'bell stroke' }).code).toBe('pattern-in-use');
  });

  it('of what only refers to itself is no such case', () => {
    const look = { ...parasol.looks[0]!, name: 'Whirl', moveOn: { afterMilliseconds: 500, to: 'Whirl' } };
    const added = edited(parasol, { kind: 'add-look', index: 0, look });
    expect(edited(added, { kind: 'remove-look', look: 'Whirl' })).toEqual(parasol);
  });

  const offers: readonly (readonly [what: string, offer: Edit, gone: string])[] = [
    ['a zone with its clips', removeZone(parasol, 'tentacles'), 'tentacles'],
    ['a zone, its clips moving to another', removeZone(parasol, 'tentacles', 'all'), 'tentacles'],
    ['a run with its clips, out of all zones', removeRun(parasol, 'rim'), 'rim'],
    ['a run, its clips moving to another', removeRun(parasol, 'tentacle 3', 'rim'), 'tentacle 3'],
    ['a pattern with its clips', removePattern(parasol, 'bell stroke'), 'bell stroke'],
    [
      'a pattern, its clips playing another',
      removePattern(parasol, 'bell stroke', 'sleeper/1'),
      'bell stroke',
    ],
    ['a look that buttons go to', removeLook(parasol, 'Drift'), 'Drift'],
    ['a look that timers go to', removeLook(parasol, 'Deep water', 'Drift'), 'Deep water'],
  ];

  it.each(offers)('is offered together with all uses: %s', (_, offer, gone) => {
    const { piece, inverse } = sound(applyEdit(parasol, offer));
    expect(mentions(piece, gone)).toBe(0);
    expect(checkPiece(piece).value).toEqual(piece);
    expect(textOf(sound(applyEdit(piece, inverse)).piece)).toBe(textOf(parasol));
  });

  it('keeps clips that move to another zone or pattern, and drops those that do not', () => {
    const clips = (piece: Piece) =>
      piece.looks.flatMap(({ tracks }) => tracks.flatMap((track) => track.clips));
    const played = clips(parasol).filter(({ pattern }) => pattern === 'bell stroke').length;
    expect(clips(edited(parasol, removePattern(parasol, 'bell stroke'))).length).toBe(
      clips(parasol).length - played,
    );
    const other = edited(parasol, removePattern(parasol, 'bell stroke', 'sleeper/1'));
    expect(clips(other).length).toBe(clips(parasol).length);
    // Both have a "period"; flesh, deep and lag are unknown to the other pattern.
    const moved = clips(other).filter((_, i) => clips(parasol)[i]!.pattern === 'bell stroke');
    expect(moved.map(({ parameters }) => parameters)).toEqual(moved.map(() => ({ period: 5 })));
  });

  it('takes a button its action where no other look is named', () => {
    const { controls } = edited(parasol, removeLook(parasol, 'Drift'));
    expect(controls.buttons[1]).toEqual({
      name: 'ferrule',
      pin: 3,
      press: { do: 'brightness-step' },
      double: { do: 'pause' },
    });
  });

  it('leaves a last run and a last look', () => {
    let piece = parasol;
    for (const { name } of parasol.looks.slice(1)) piece = edited(piece, removeLook(piece, name));
    expect(refusal(piece, removeLook(piece, piece.looks[0]!.name))).toMatchObject({
      code: 'wrong-length',
      message: 'This was the last look.',
    });
    for (const { name } of parasol.lines[0]!.runs.slice(1)) piece = edited(piece, removeRun(piece, name));
    expect(refusal(piece, removeRun(piece, 'rim')).code).toBe('wrong-length');
  });
});
