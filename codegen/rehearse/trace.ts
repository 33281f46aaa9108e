/** What the wearer did and what came of it, read off the frames. */

import type { PlayerEvent } from '../../engine/controls/player.ts';
import type { Moment } from '../../engine/look/moment.ts';

/**
 * The changes between one frame and the next, in the words of the player's own events. A look is dated by
 * its own clock (uptime minus look time), anything else by the first frame that shows it.
 */
export function traceOf(moments: readonly Moment[], lookNames: readonly string[]): PlayerEvent[] {
  return moments.slice(1).flatMap((now, i) => changes(moments[i]!, now, lookNames));
}

function changes(before: Moment, now: Moment, lookNames: readonly string[]): PlayerEvent[] {
  const events: PlayerEvent[] = [];
  const seen = now.uptimeMs;
  if (now.look !== before.look || now.ms < before.ms) {
    const name = lookNames[now.look] ?? `look number ${now.look}`;
    events.push({ ms: (seen - now.ms) >>> 0, kind: 'look', value: name });
  }
  if (now.brightness !== before.brightness) {
    events.push({ ms: seen, kind: 'brightness', value: now.brightness });
  }
  if (now.blackout !== before.blackout) events.push({ ms: seen, kind: 'blackout', value: now.blackout });
  if (now.paused !== before.paused) events.push({ ms: seen, kind: 'pause', value: now.paused });
  return events;
}
