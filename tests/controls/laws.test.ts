import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Player } from '../../engine/controls/player.ts';
import { type PressScript, press } from '../../engine/controls/press.ts';
import type { Piece, PieceInput } from '../../engine/piece/schema.ts';
import { pieceWithButtons, threeLooks } from './play.ts';

type Action = NonNullable<NonNullable<NonNullable<PieceInput['controls']>['buttons']>[number]['press']>;

const action: fc.Arbitrary<Action> = fc.constantFrom<Action>(
  { do: 'next-look' },
  { do: 'previous-look' },
  { do: 'go-to-look', look: 'Ebb' },
  { do: 'brightness-step' },
  { do: 'blackout' },
  { do: 'pause' },
);

const button = fc.record({ press: action, hold: action, double: action }, { requiredKeys: [] });

const piece: fc.Arbitrary<Piece> = fc
  .tuple(fc.array(button, { minLength: 1, maxLength: 3 }), fc.integer({ min: 0, max: 400 }), fc.boolean())
  .map(([buttons, dissolveMilliseconds, moves]) =>
    pieceWithButtons(
      buttons.map((actions, index) => ({ name: `button ${index}`, pin: 2 + index, ...actions })),
      {
        looks: threeLooks.map((look) => ({
          ...look,
          dissolveMilliseconds,
          ...(moves ? { moveOn: { afterMilliseconds: 777 } } : {}),
        })),
      },
    ),
  );

/** Contacts that change at random, now a few milliseconds apart like bounce, now seconds. */
const contacts = fc.array(
  fc.record({
    gap: fc.oneof(
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 20, max: 700 }),
      fc.integer({ max: 9000, min: 0 }),
    ),
    button: fc.nat(2),
    down: fc.boolean(),
  }),
  { maxLength: 40 },
);

function scriptOf(
  played: Piece,
  steps: readonly { gap: number; button: number; down: boolean }[],
): PressScript {
  const count = played.controls.buttons.length;
  let ms = 0;
  const timed = steps.map(({ gap, button, down }) => {
    ms += gap;
    return { ms, button: button % count, down };
  });
  return { contacts: timed, endMs: ms + 2000 };
}

test('C1 across the 49.7 days of the counter nothing changes for the wearer: 1,000 random scripts', () => {
  fc.assert(
    fc.property(piece, contacts, fc.integer({ min: 0, max: 5000 }), (played, steps, before) => {
      const script = scriptOf(played, steps);
      const wrapping = press({ piece: played }, script, 2 ** 32 - before);
      expect(wrapping).toEqual(press({ piece: played }, script));
    }),
    { seed: 20260606, numRuns: 1000 },
  );
});

test('C3 C4 a press of 40 ms or more always counts, however the contact bounces', () => {
  const pieces = [
    pieceWithButtons([{ name: 'brooch', pin: 2, press: { do: 'next-look' } }]),
    pieceWithButtons([{ name: 'brooch', pin: 2, press: { do: 'next-look' }, hold: { do: 'pause' } }]),
    pieceWithButtons([{ name: 'brooch', pin: 2, press: { do: 'next-look' }, double: { do: 'pause' } }]),
  ];
  /** Bounce within 6 ms of each change: the mean worst case of Ganssle's measurements is 6.2 ms. */
  const bounce = fc
    .array(fc.integer({ min: 0, max: 6 }), { maxLength: 4 })
    .map((times) => times.sort((a, b) => a - b));
  const presses = fc.array(fc.tuple(fc.integer({ min: 40, max: 560 }), bounce, bounce), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(fc.constantFrom(...pieces), presses, (played, made) => {
      let ms = 1000;
      const steps: PressScript['contacts'][number][] = [];
      const change = (down: boolean, times: readonly number[]) => {
        for (const [index, offset] of times.entries()) {
          steps.push({ ms: ms + offset, button: 0, down: index % 2 === 0 ? down : !down });
        }
        steps.push({ ms: ms + 6, button: 0, down });
      };
      for (const [length, closing, opening] of made) {
        change(true, closing);
        ms += length;
        change(false, opening);
        ms += 1000;
      }
      const events = press({ piece: played }, { contacts: steps, endMs: ms + 1000 });
      expect(events.filter(({ kind }) => kind === 'look')).toHaveLength(made.length);
    }),
    { seed: 20260607, numRuns: 400 },
  );
});

test('C13 events come in order of time and kind, and add up to the state', () => {
  const order = ['look', 'brightness', 'blackout', 'pause'];
  fc.assert(
    fc.property(piece, contacts, (played, steps) => {
      const script = scriptOf(played, steps);
      const events = press({ piece: played }, script);
      for (const [index, event] of events.slice(1).entries()) {
        const before = events[index]!;
        expect(event.ms).toBeGreaterThanOrEqual(before.ms);
        if (event.ms === before.ms) {
          expect(order.indexOf(event.kind)).toBeGreaterThanOrEqual(order.indexOf(before.kind));
        }
      }
      const told = { look: 'Dusk', brightness: 64, blackout: false, pause: false } as Record<string, unknown>;
      for (const { kind, value } of events) told[kind] = value;
      const moment = finalMoment(played, script);
      expect(told).toEqual({
        look: played.looks[moment.look]!.name,
        brightness: moment.brightness,
        blackout: moment.blackout,
        pause: moment.paused,
      });
    }),
    { seed: 20260608, numRuns: 300 },
  );
});

function finalMoment(played: Piece, script: PressScript): ReturnType<Player['moment']> {
  const player = new Player({ piece: played });
  const down = played.controls.buttons.map(() => false);
  for (let ms = 1; ms <= script.endMs; ms++) {
    for (const contact of script.contacts)
      if (Math.max(1, contact.ms) === ms) down[contact.button] = contact.down;
    player.step(down);
  }
  return player.moment();
}

test('C1 C12 in every moment ms is below the next move-on, and mix below 255', () => {
  fc.assert(
    fc.property(piece, contacts, (played, steps) => {
      const script = scriptOf(played, steps.slice(0, 15));
      const player = new Player({ piece: played });
      let next = 0;
      const down = played.controls.buttons.map(() => false);
      for (let ms = 1; ms <= script.endMs; ms++) {
        for (; next < script.contacts.length && script.contacts[next]!.ms <= ms; next++) {
          down[script.contacts[next]!.button] = script.contacts[next]!.down;
        }
        player.step(down);
        const moment = player.moment();
        const { moveOn, dissolveMilliseconds } = played.looks[moment.look]!;
        if (moveOn && moment.ms >= moveOn.afterMilliseconds) expect.fail(`${moment.ms} is past the move-on`);
        if (moment.leaving && moment.leaving.mix > 254) expect.fail(`mix ${moment.leaving.mix}`);
        if (moment.leaving && moment.ms >= dissolveMilliseconds) expect.fail('still leaving');
      }
    }),
    { seed: 20260609, numRuns: 60 },
  );
});

test('C1 an hour with a held button is played in a moment', () => {
  const played = pieceWithButtons([
    { name: 'brooch', pin: 2, press: { do: 'next-look' }, hold: { do: 'pause' } },
  ]);
  const script = { contacts: [{ ms: 10, button: 0, down: true }], endMs: 3_600_000 };
  const began = performance.now();
  expect(press({ piece: played }, script)).toEqual([{ ms: 630, kind: 'pause', value: true }]);
  expect(performance.now() - began).toBeLessThan(5000);
});
