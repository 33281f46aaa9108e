import { describe, expect, test } from 'vitest';
import { Player } from '../../engine/controls/player.ts';
import { parseScript } from '../../engine/controls/script.ts';
import type { Piece, PieceInput } from '../../engine/piece/schema.ts';
import { pieceWithButtons, played, threeLooks } from './play.ts';

const press = (action: NonNullable<NonNullable<PieceInput['controls']>['buttons']>[number]['press']) => [
  { name: 'brooch', pin: 2, press: action! },
];
const next = press({ do: 'next-look' });
const thrice = '100 down;200 up;300 down;400 up;500 down;600 up;700 end';

function playerAfter(piece: Piece, steps: number, down: readonly boolean[] = []): Player {
  const player = new Player({ piece });
  for (let ms = 0; ms < steps; ms++) player.step(down);
  return player;
}

describe('looks', () => {
  test('C10 next and previous wrap round', () => {
    expect(played(pieceWithButtons(next), thrice)).toEqual([
      '120 look Ebb',
      '320 look Flood',
      '520 look Dusk',
    ]);
    expect(played(pieceWithButtons(press({ do: 'previous-look' })), thrice)).toEqual([
      '120 look Flood',
      '320 look Ebb',
      '520 look Dusk',
    ]);
  });

  test('C10 C13 going to the current look restarts it, and is told', () => {
    const piece = pieceWithButtons(press({ do: 'go-to-look', look: 'Flood' }));
    expect(played(piece, '100 down;200 up;300 down;400 up;700 end')).toEqual([
      '120 look Flood',
      '320 look Flood',
    ]);
    const player = playerAfter(piece, 500);
    expect(player.moment().ms).toBe(500);
    for (let ms = 0; ms < 30; ms++) player.step([true]);
    expect(player.moment()).toMatchObject({ look: 2, ms: 9, uptimeMs: 530 });
  });

  test('C1 ms counts on past the length of the look', () => {
    expect(playerAfter(pieceWithButtons(next), 2500).moment()).toMatchObject({ look: 0, ms: 2500 });
  });
});

describe('uptime', () => {
  test('C1 counts on from 4294967295 at 0', () => {
    const player = new Player({ piece: pieceWithButtons(next) }, 0xffff_fffe);
    player.step([]);
    expect(player.moment()).toMatchObject({ uptimeMs: 0xffff_ffff, ms: 1 });
    player.step([]);
    expect(player.moment()).toMatchObject({ uptimeMs: 0, ms: 2 });
  });
});

describe('timed move-on', () => {
  const moving: PieceInput['looks'] = threeLooks.map((look, index) =>
    index === 0
      ? { ...look, moveOn: { afterMilliseconds: 2500 } }
      : index === 1
        ? { ...look, moveOn: { afterMilliseconds: 300, to: 'Dusk' } }
        : look,
  );

  test('C2 enters at its exact millisecond, next look or a named one', () => {
    expect(played(pieceWithButtons([], { looks: moving }), '5700 end')).toEqual([
      '2500 look Ebb',
      '2800 look Dusk',
      '5300 look Ebb',
      '5600 look Dusk',
    ]);
  });

  test('C2 the last look moves on to the first', () => {
    const looks = [threeLooks[0]!, { ...threeLooks[1]!, moveOn: { afterMilliseconds: 50 } }];
    expect(played(pieceWithButtons(next, { looks }), '100 down; 500 end')).toEqual([
      '120 look Ebb',
      '170 look Dusk',
    ]);
  });

  test('C2 C10 a pause holds it back for as long as it lasts', () => {
    const piece = pieceWithButtons(press({ do: 'pause' }), { looks: moving });
    expect(played(piece, '980 down; 1100 up; 1980 down; 2100 up; 3600 end')).toEqual([
      '1000 pause on',
      '2000 pause off',
      // 999 ms had passed before the pause, and step 2000 itself is still paused.
      '3500 look Ebb',
    ]);
  });

  test('C2 C13 a button in the same millisecond acts after it, and both are told', () => {
    const piece = pieceWithButtons(next, { looks: moving });
    expect(played(piece, '2480 down; 2700 end')).toEqual(['2500 look Ebb', '2500 look Flood']);
  });
});

describe('blackout', () => {
  const piece = pieceWithButtons([
    { name: 'brooch', pin: 2, press: { do: 'next-look' } },
    { name: 'clasp', pin: 3, press: { do: 'blackout' }, hold: { do: 'pause' } },
  ]);

  test('C9 any action first ends it and does nothing else', () => {
    expect(played(piece, '100 down clasp; 200 up clasp; 300 down; 400 up; 500 down; 900 end')).toEqual([
      '220 blackout on',
      '320 blackout off',
      '520 look Ebb',
    ]);
  });

  test('C9 a hold as well', () => {
    expect(played(piece, '100 down clasp; 200 up clasp; 300 down clasp; 2000 up clasp; 3000 end')).toEqual([
      '220 blackout on',
      '920 blackout off',
    ]);
  });

  test('C9 time goes on in the dark', () => {
    const looks = [{ ...threeLooks[0]!, moveOn: { afterMilliseconds: 1000 } }, threeLooks[1]!];
    const dark = pieceWithButtons(press({ do: 'blackout' }), { looks });
    expect(played(dark, '100 down; 200 up; 2000 end')).toEqual(['120 blackout on', '1000 look Ebb']);
  });
});

describe('brightness', () => {
  test('C11 goes up step by step from the start brightness and begins again', () => {
    const piece = pieceWithButtons(press({ do: 'brightness-step' }));
    expect(played(piece, thrice)).toEqual(['120 brightness 128', '320 brightness 255', '520 brightness 32']);
  });

  test('C11 a start between two steps goes to the one above', () => {
    const piece = pieceWithButtons(press({ do: 'brightness-step' }), { output: { startBrightness: 100 } });
    expect(played(piece, '100 down; 200 end')).toEqual(['120 brightness 128']);
  });

  test('C11 a step that changes nothing is not told', () => {
    const piece = pieceWithButtons(press({ do: 'brightness-step' }), { controls: { brightnessSteps: [64] } });
    expect(played(piece, thrice)).toEqual([]);
  });
});

describe('pause', () => {
  const piece = pieceWithButtons([
    { name: 'brooch', pin: 2, press: { do: 'next-look' } },
    { name: 'clasp', pin: 3, press: { do: 'pause' } },
  ]);

  test('C10 stops look time, not uptime, and outlives a change of look', () => {
    // The contact closes in step 101, so the pause comes in step 121.
    const player = playerAfter(piece, 100);
    for (let ms = 0; ms < 50; ms++) player.step([false, true]);
    expect(player.moment()).toMatchObject({ ms: 121, uptimeMs: 150, paused: true });
    for (let ms = 0; ms < 50; ms++) player.step([true, true]);
    expect(player.moment()).toMatchObject({ look: 1, ms: 0, uptimeMs: 200, paused: true });
  });
});

describe('dissolve', () => {
  const looks = threeLooks.map((look) => ({ ...look, dissolveMilliseconds: look.name === 'Dusk' ? 0 : 200 }));
  const piece = pieceWithButtons(next, { looks });
  /** A press that takes effect in step 120. */
  const down = (ms: number) => [ms >= 100 && ms < 150];

  function at(target: number): ReturnType<Player['moment']> {
    const player = new Player({ piece });
    for (let ms = 1; ms <= target; ms++) player.step(down(ms));
    return player.moment();
  }

  test('C12 the old look leaves with its own time', () => {
    expect(at(119).leaving).toBeNull();
    expect(at(120)).toMatchObject({ look: 1, ms: 0, leaving: { look: 0, ms: 120, mix: 0 } });
  });

  test('T11 mix is floor(ms * 255 / dissolve), up to 253 in its last millisecond', () => {
    expect(at(121).leaving).toEqual({ look: 0, ms: 121, mix: 1 });
    expect(at(220).leaving).toEqual({ look: 0, ms: 220, mix: 127 });
    expect(at(319).leaving).toEqual({ look: 0, ms: 319, mix: 253 });
  });

  test('C1 it is gone when the dissolve time has come', () => {
    expect(at(320)).toMatchObject({ look: 1, ms: 200, leaving: null });
  });

  test('C12 a look entered meanwhile drops the older leaving one; no dissolve leaves none', () => {
    const player = new Player({ piece });
    const pressed = (ms: number) => [(ms >= 100 && ms < 140) || (ms >= 200 && ms < 240) || ms >= 300];
    const seen = new Map<number, ReturnType<Player['moment']>>();
    for (let ms = 1; ms <= 330; ms++) {
      player.step(pressed(ms));
      seen.set(ms, player.moment());
    }
    expect(seen.get(219)).toMatchObject({ look: 1, leaving: { look: 0 } });
    expect(seen.get(220)).toMatchObject({ look: 2, ms: 0, leaving: { look: 1, ms: 100, mix: 0 } });
    expect(seen.get(320)).toMatchObject({ look: 0, ms: 0, leaving: null });
  });

  test('C1 C12 a pause stops the dissolve where it is', () => {
    const pausing = pieceWithButtons([...next, { name: 'clasp', pin: 3, press: { do: 'pause' } }], { looks });
    const player = new Player({ piece: pausing });
    for (let ms = 1; ms <= 1000; ms++) player.step([ms >= 100, ms >= 200]);
    // Step 220 counts before the button pauses, so that 100 ms have passed since 120.
    expect(player.moment().leaving).toEqual({ look: 0, ms: 220, mix: 127 });
  });
});

describe('telling', () => {
  test('C13 looks, brightness, blackout, pause; within a kind in the order they happened', () => {
    const piece = pieceWithButtons([
      { name: 'a', pin: 2, press: { do: 'pause' } },
      { name: 'b', pin: 3, press: { do: 'brightness-step' } },
      { name: 'c', pin: 4, press: { do: 'next-look' } },
      { name: 'd', pin: 5, press: { do: 'blackout' } },
      { name: 'e', pin: 6, press: { do: 'next-look' } },
    ]);
    const together = '100 down a; 100 down b; 100 down c; 100 down d; 100 down e; 200 end';
    expect(played(piece, together)).toEqual([
      '120 look Ebb',
      '120 brightness 128',
      '120 blackout on',
      '120 blackout off',
      '120 pause on',
    ]);
  });

  test('C13 the state at the start is not told', () => {
    expect(played(pieceWithButtons(next), '5000 end')).toEqual([]);
  });

  test('C14 the millisecond of the end is still played', () => {
    expect(parseScript('0 end', pieceWithButtons(next)).value).toEqual({ contacts: [], endMs: 0 });
    expect(played(pieceWithButtons(next), '100 down; 120 end')).toEqual(['120 look Ebb']);
  });
});
