/** Plays a press script and tells what changes: the same bytes as the sketch's host program `play`. */
import type { Piece } from '../piece/schema.ts';
import { Player, type PlayerEvent } from './player.ts';
import type { PressScript } from './script.ts';

export { type PressScript, parseScript } from './script.ts';

/**
 * Plays every millisecond from 1 up to and with the script's end. The times of the events are those of
 * the script, whatever `startUptimeMs` says: the counter's wrap is nothing the wearer could notice.
 */
export function press(
  score: { readonly piece: Piece },
  script: PressScript,
  startUptimeMs = 0,
): PlayerEvent[] {
  const player = new Player(score, startUptimeMs);
  const down = score.piece.controls.buttons.map(() => false);
  const told: PlayerEvent[] = [];
  let next = 0;
  for (let ms = 1; ms <= script.endMs; ms++) {
    for (; next < script.contacts.length && script.contacts[next]!.ms <= ms; next++) {
      down[script.contacts[next]!.button] = script.contacts[next]!.down;
    }
    for (const event of player.step(down)) told.push({ ...event, ms });
  }
  return told;
}

/** One line an event: `MS look NAME`, `MS brightness N`, `MS blackout on|off`, `MS pause on|off`. */
export function printEvents(events: readonly PlayerEvent[]): string {
  return events.map(({ ms, kind, value }) => `${ms} ${kind} ${printValue(value)}\n`).join('');
}

function printValue(value: PlayerEvent['value']): string {
  return typeof value === 'boolean' ? (value ? 'on' : 'off') : String(value);
}
