/**
 * The player of the sketch and the player of the engine, step by step: random buttons, random presses with
 * bounce, and clocks that run across the wrap of their counter after 49.7 days. Both must tell the same text.
 */
import { describe, expect, test } from 'vitest';
import { printHostBundle } from '../../codegen/host-bundle.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { press, printEvents } from '../../engine/controls/press.ts';
import { Chance } from '../support/generate/chance.ts';
import { gesturesIn, scriptOf } from '../support/generate/controls.ts';
import { generatePlaying, type Playing, scoreWithButtons, wraps } from './playing.ts';

const configurations = 40;
const scriptsEach = 25;
const firstSeed = 5001;

const seeds = Array.from({ length: configurations }, (_, index) => firstSeed + index);
const scores = seeds.map(scoreWithButtons);
const playings = scores.flatMap((score, piece) => {
  const chance = new Chance(seeds[piece]! * 7919);
  return chance.list(scriptsEach, () => generatePlaying(chance, score, piece));
});

function pressed({ piece, script, start }: Playing): string {
  const score = scores[piece]!;
  return printEvents(press(score, scriptOf(script, score.piece), start));
}

/** Once all chatter is over, a contact stays closed for longer than a hand would press. */
function hasCaught({ piece: number, script }: Playing): boolean {
  const { piece } = scores[number]!;
  const closedSince = new Map<number, number>();
  return scriptOf(script, piece).contacts.some(({ ms, button, down }) => {
    if (down) closedSince.set(button, ms);
    return !down && ms - (closedSince.get(button) ?? ms) > piece.controls.caughtMilliseconds;
  });
}

describe(`H2 C1 to C14: ${playings.length} scripts on ${configurations} sets of buttons, seeds ${firstSeed} and on`, () => {
  test('the host plays what the engine presses', async () => {
    const { value: played, diagnostics } = await withHost(
      printHostBundle(scores),
      async (program) => {
        const told: string[] = [];
        for (const { piece, script, start } of playings) {
          told.push(await program.run([String(piece), 'play', '--start', String(start)], script));
        }
        return told;
      },
      { optimise: '-O1' },
    );
    expect(diagnostics).toEqual([]);
    for (const [index, playing] of playings.entries()) {
      const engine = pressed(playing);
      if (played![index] === engine) continue;
      const seed = seeds[playing.piece];
      expect({ seed, ...playing, told: played![index] }).toEqual({ seed, ...playing, told: engine });
    }
  });

  test('the scripts reach every gesture, every change, buttons caught, and the wrap', () => {
    const gestures = { press: 0, hold: 0, double: 0 };
    const told = {
      look: 0,
      brightness: 0,
      'blackout on': 0,
      'blackout off': 0,
      'pause on': 0,
      'pause off': 0,
    };
    for (const playing of playings) {
      const { piece } = scores[playing.piece]!;
      for (const gesture of gesturesIn(piece, scriptOf(playing.script, piece))) gestures[gesture] += 1;
      const text = pressed(playing);
      for (const kind of Object.keys(told) as (keyof typeof told)[]) {
        if (text.includes(` ${kind}`)) told[kind] += 1;
      }
    }
    const rare = Object.entries({ ...gestures, ...told }).filter(([, count]) => count < 100);
    expect(rare).toEqual([]);
    expect(playings.filter((playing) => hasCaught(playing)).length).toBeGreaterThan(50);
    expect(playings.filter((playing) => wraps(playing, scores)).length).toBeGreaterThan(playings.length / 3);
  });
});
