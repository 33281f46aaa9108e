/** What the wearer did and what came of it, read off the frames. */
import type { PlayerEvent } from '../../engine/controls/player.ts';
import type { Moment } from '../../engine/look/moment.ts';
import type { SettingChange } from './recording.ts';
import type { SettingName } from './shown.ts';

/**
 * The changes between one frame and the next, in the words of the player's own events. A look is dated by
 * its own clock (uptime minus look time). Anything else is dated by `settings`: a slow frame shows it later
 * than it happened. Without a setting of that kind, the first frame that shows it is the date.
 */
export function traceOf(
  moments: readonly Moment[],
  lookNames: readonly string[],
  settings: readonly SettingChange[],
): PlayerEvent[] {
  return moments.slice(1).flatMap((now, i) => changes(moments[i]!, now, lookNames, settings));
}

function changes(
  before: Moment,
  now: Moment,
  lookNames: readonly string[],
  settings: readonly SettingChange[],
): PlayerEvent[] {
  const events: PlayerEvent[] = [];
  if (now.look !== before.look || now.ms < before.ms) {
    const name = lookNames[now.look] ?? `look number ${now.look}`;
    events.push({ ms: (now.uptimeMs - now.ms) >>> 0, kind: 'look', value: name });
  }
  const tell = (kind: SettingName, value: number | boolean) => {
    const set = settings.filter(
      ({ setting, value: to, uptimeMs }) =>
        setting === kind && to === Number(value) && uptimeMs >= before.uptimeMs && uptimeMs <= now.uptimeMs,
    );
    events.push({ ms: set.at(-1)?.uptimeMs ?? now.uptimeMs, kind, value });
  };
  if (now.brightness !== before.brightness) tell('brightness', now.brightness);
  if (now.blackout !== before.blackout) tell('blackout', now.blackout);
  if (now.paused !== before.paused) tell('pause', now.paused);
  return events.sort((a, b) => a.ms - b.ms);
}
