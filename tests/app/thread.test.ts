/** The thread without a browser: what leads where, drawing along, what goes with a look. Rules: app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { leadsOf } from '../../app/web/thread/leads.ts';
import { whatGoesWith } from '../../app/web/thread/removal.ts';
import { makingWay, placeAt } from '../../app/web/thread/reorder.ts';
import { Player } from '../../engine/controls/player.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import { removeLook } from '../../engine/edit/offers/remove.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { samplePiece } from './browser/samples.ts';

const parasol = samplePiece('jellyfish-parasol');
const names = parasol.looks.map(({ name }) => name);

describe('B5 what leads where', () => {
  test('stands at the beads and between them, each gesture by its button', () => {
    const leads = leadsOf(parasol);
    expect(leads.onward).toEqual(['press handle']);
    expect(leads.back).toEqual([]);
    expect(leads.into).toEqual([['hold ferrule'], [], [], [], [], []]);
    expect(leads.timers).toEqual([null, null, null, null, 'after 1 min', null]);
    expect(leads.jumps).toEqual([]);
    expect(leads.tail).toEqual([
      'press handle: Drift again',
      'hold handle: blackout',
      'press ferrule: brighter',
      'twice ferrule: pause',
    ]);
  });

  test('does not name the only button', () => {
    const { onward, tail } = leadsOf(withButtons(parasol, parasol.controls.buttons.slice(0, 1)));
    expect(onward).toEqual(['press']);
    expect(tail).toEqual(['press: Drift again', 'hold: blackout']);
  });

  test('is where the player goes when a timer runs out', () => {
    const piece = structuredClone(parasol);
    piece.looks[1]!.moveOn = { afterMilliseconds: 50, to: names[4]! };
    piece.looks[2]!.moveOn = { afterMilliseconds: 50 };
    piece.looks.at(-1)!.moveOn = { afterMilliseconds: 50 };
    const { timers, jumps } = leadsOf(piece);
    for (const [from, { moveOn }] of piece.looks.entries()) {
      if (moveOn === undefined) continue;
      const player = new Player({ piece });
      player.put({ ...player.moment(), look: from });
      for (let ms = 0; ms < moveOn.afterMilliseconds; ms++) player.step([]);
      const jump = jumps.find((one) => one.from === from);
      expect(jump?.to ?? from + 1).toBe(player.moment().look);
      expect(timers[from] === null).toBe(jump !== undefined);
    }
    expect(jumps.map(({ from, to }) => [from, to])).toEqual([
      [1, 4],
      [5, 0],
    ]);
  });
});

describe('B6 a bead that is drawn', () => {
  const centres = [50, 150, 250, 350];

  test('comes to lie behind all beads that it has passed, and where it was otherwise', () => {
    expect([...centres.keys()].map((from) => placeAt(centres, from, centres[from]!))).toEqual([0, 1, 2, 3]);
    expect(placeAt(centres, 0, 240)).toBe(1);
    expect(placeAt(centres, 0, 260)).toBe(2);
    expect(placeAt(centres, 3, 10)).toBe(0);
    expect(placeAt(centres, 1, 9000)).toBe(3);
  });

  test('has others make way so that they hang as after the reordering', () => {
    for (const from of centres.keys()) {
      for (const to of centres.keys()) {
        const edit = { kind: 'reorder-look', look: names[from]!, to } as const;
        const four = {
          ...parasol,
          looks: parasol.looks.slice(0, 4),
          controls: { ...parasol.controls, buttons: [] },
        };
        const after = applyEdit(four, edit).value!.piece.looks.map(({ name }) => name);
        for (const index of centres.keys()) {
          if (index === from) continue;
          expect(after[index + makingWay(index, from, to)]).toBe(names[index]);
        }
        expect(after[to]).toBe(names[from]);
      }
    }
  });
});

test('B7 what is said to go with a look is what its removal changes', () => {
  const piece = structuredClone(parasol);
  piece.looks[2]!.moveOn = { afterMilliseconds: 1000, to: 'Drift' };
  expect(whatGoesWith(piece, 'Drift')).toEqual([
    'Its 3 clips go with it.',
    'Sea sparkle will move on to the next look instead.',
    'The hold of ferrule will do nothing.',
  ]);
  const after = applyEdit(piece, removeLook(piece, 'Drift')).value!.piece;
  expect(after.looks.find(({ name }) => name === 'Sea sparkle')!.moveOn).toEqual({ afterMilliseconds: 1000 });
  expect(after.controls.buttons[1]!.hold).toBeUndefined();
  const bare = structuredClone(parasol);
  bare.looks[1]!.tracks = [];
  expect(whatGoesWith(bare, names[1]!)).toEqual([]);
});

function withButtons(piece: Piece, buttons: Piece['controls']['buttons']): Piece {
  return { ...piece, controls: { ...piece.controls, buttons } };
}
