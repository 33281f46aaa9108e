/** `PROG play` against the engine's `press`: random scripts with bounce, also across the counter's wrap. */
import { describe, expect, it } from 'vitest';
import { type HostProgram, withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { type PressScript, press, printEvents } from '../../engine/controls/press.ts';
import type { Score } from '../../engine/look/score.ts';
import { Chance } from '../support/generate-piece.ts';
import { lookOf, puntLantern, scoreOf } from './scores.ts';

const looks = [
  lookOf('Glow', [{}], { dissolveMilliseconds: 400 }),
  lookOf('Ember "low" \\ two', [{}], { moveOn: { afterMilliseconds: 1700, to: 'Würm ☾ ??/' } }),
  lookOf('Würm ☾ ??/', [{ lengthMilliseconds: 777 }], {
    lengthMilliseconds: 777,
    moveOn: { afterMilliseconds: 5000 },
  }),
];

/** Every gesture and action; steps in no order, so that the smallest above has to be sought. */
const everything = scoreOf(
  puntLantern({
    looks,
    controls: {
      debounceMilliseconds: 20,
      brightnessSteps: [128, 32, 255, 64],
      caughtMilliseconds: 2500,
      buttons: [
        { name: 'knob', pin: 2, press: { do: 'next-look' }, hold: { do: 'blackout' } },
        { name: 'the pommel', pin: 3, press: { do: 'previous-look' }, double: { do: 'brightness-step' } },
        {
          name: 'brooch',
          pin: 4,
          press: { do: 'pause' },
          hold: { do: 'go-to-look', look: 'Glow' },
          double: { do: 'brightness-step' },
        },
        { name: 'tassel', pin: 5, press: { do: 'brightness-step' } },
      ],
    },
  }),
);

const onePress = scoreOf(
  puntLantern({
    looks,
    controls: { debounceMilliseconds: 1, buttons: [{ name: 'knob', pin: 2, press: { do: 'next-look' } }] },
  }),
);

/** Presses of all lengths, with bounce at both ends, and many of them just around the times that matter. */
function randomScript(chance: Chance, score: Score): PressScript {
  const { buttons, holdMilliseconds, doubleMilliseconds, caughtMilliseconds } = score.piece.controls;
  const lengths = [40, 60, holdMilliseconds, holdMilliseconds - 1, holdMilliseconds + 1, caughtMilliseconds];
  const contacts: { ms: number; button: number; down: boolean }[] = [];
  for (const [button] of buttons.entries()) {
    let ms = chance.whole(0, 900);
    for (let left = chance.whole(0, 7); left > 0; left--) {
      const length = chance.flip(0.4) ? chance.pick(lengths) : chance.whole(1, 900);
      for (const down of [true, false]) {
        for (let bounces = chance.whole(0, 3); bounces > 0; bounces--) {
          contacts.push({ ms, button, down }, { ms: ms + chance.whole(0, 2), button, down: !down });
          ms += chance.whole(2, 4);
        }
        contacts.push({ ms, button, down });
        ms += down
          ? length
          : chance.pick([doubleMilliseconds, doubleMilliseconds - 1, chance.whole(1, 1500)]);
      }
    }
  }
  contacts.sort((a, b) => a.ms - b.ms);
  return { contacts, endMs: (contacts.at(-1)?.ms ?? 0) + chance.whole(0, 7000) };
}

function linesOf({ contacts, endMs }: PressScript, { piece }: Score): string {
  const names = piece.controls.buttons.map(({ name }) => name);
  const steps = contacts.map(({ ms, button, down }) => `${ms} ${down ? 'down' : 'up'} ${names[button]}\n`);
  return `${steps.join('')}${endMs} end\n`;
}

async function compare(program: HostProgram, score: Score, seeds: readonly number[]) {
  const kinds = new Map<string, number>();
  for (const seed of seeds) {
    const chance = new Chance(seed);
    const script = randomScript(chance, score);
    // Every second script begins so shortly before 2^32 that the counter wraps in its course.
    const start = seed % 2 === 0 ? 0 : 2 ** 32 - chance.whole(1, script.endMs + 1);
    const events = press(score, script, start);
    const played = await program.run(['play', '--start', String(start)], linesOf(script, score));
    expect(played, `seed ${seed}`).toBe(printEvents(events));
    for (const { kind, value } of events) {
      const told = `${kind} ${typeof value === 'boolean' ? value : ''}`.trim();
      kinds.set(told, (kinds.get(told) ?? 0) + 1);
    }
  }
  return kinds;
}

const seedsFrom = (first: number, count: number) => Array.from({ length: count }, (_, i) => first + i);

describe('H2 the host plays as the engine presses', () => {
  it('900 scripts with every gesture and action (seeds 1 to 900)', async () => {
    const { text } = generateSketch(everything, 'host').value!;
    const { value: kinds, diagnostics } = await withHost(
      text,
      (program) => compare(program, everything, seedsFrom(1, 900)),
      { optimise: '-O2' },
    );
    expect(diagnostics).toEqual([]);
    for (const kind of [
      'look',
      'brightness',
      'blackout true',
      'blackout false',
      'pause true',
      'pause false',
    ]) {
      expect(kinds!.get(kind), kind).toBeGreaterThan(100);
    }
  });

  it('100 scripts with a plain button, the sanitizers watching (seeds 1001 to 1100)', async () => {
    const { text } = generateSketch(onePress, 'host').value!;
    const { value: kinds } = await withHost(
      text,
      (program) => compare(program, onePress, seedsFrom(1001, 100)),
      { sanitize: true },
    );
    expect(kinds!.get('look')).toBeGreaterThan(100);
  });

  it('H3 answers 2 to what it does not understand', async () => {
    const { text } = generateSketch(everything, 'host').value!;
    await withHost(text, async (program) => {
      const refused = (args: string[], input = '') =>
        expect(program.run(args, input), args.join(' ')).rejects.toThrow('with 2');
      await refused([]);
      await refused(['dance']);
      await refused(['frames']);
      await refused(['frames', 'glow', '0']);
      await refused(['frames', 'Glow', '1x']);
      await refused(['frames', 'Glow', '4294967296']);
      await refused(['frames', '--brightness', '256', 'Glow', '0']);
      await refused(['play', '--start', '-1'], '10 end\n');
      await refused(['play'], '10 down\n');
      await refused(['play'], '10 down toggle\n20 end\n');
      await refused(['play'], '10 press\n20 end\n');
      await refused(['play'], '20 down\n10 up\n30 end\n');
      await refused(['play'], '-5 down\n30 end\n');
      await refused(['play'], '99999999999 end\n');
      expect(await program.run(['play'], '0 end\n')).toBe('');
      expect(await program.run(['frames', 'Würm ☾ ??/', '0'])).toMatch(/^0 [0-9a-f]{48}\n$/);
    });
  });
});
