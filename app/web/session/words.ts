/** Words for what buttons do and for what has happened. */
import type { PlayerEvent } from '../../../engine/controls/player.ts';
import type { Action, Button } from '../../../engine/piece/schema.ts';

export function actionWords(action: Action): string {
  switch (action.do) {
    case 'next-look':
      return 'next look';
    case 'previous-look':
      return 'look before';
    case 'go-to-look':
      return action.look;
    case 'brightness-step':
      return 'brighter';
    case 'blackout':
      return 'blackout';
    case 'pause':
      return 'pause';
  }
}

const gestures = [
  ['press', 'press'],
  ['hold', 'hold'],
  ['double', 'twice'],
] as const;

/** `[{ gesture: 'press', effect: 'next look' }, ...]` in the order press, hold, double. */
export function gestureWords(button: Button): { gesture: string; effect: string }[] {
  return gestures.flatMap(([key, gesture]) => {
    const action = button[key];
    return action === undefined ? [] : [{ gesture, effect: actionWords(action) }];
  });
}

export function eventWords({ kind, value }: PlayerEvent): string {
  switch (kind) {
    case 'look':
      return `Look: ${value}.`;
    case 'brightness':
      return `Brightness ${percent(Number(value))}.`;
    case 'blackout':
      return value ? 'Blackout.' : 'Blackout ends.';
    case 'pause':
      return value ? 'Paused.' : 'Playing.';
  }
}

/** A byte as a share of full, `25 %`; small ones keep a digit, so that 1 of 255 is not nothing. */
export function percent(byte: number): string {
  const share = (byte * 100) / 255;
  return `${share > 0 && share < 10 ? share.toFixed(1) : share.toFixed(0)} %`;
}

/** `3.7 s`, `2 min 5 s`, `1 h 20 min`. */
export function duration(ms: number): string {
  const seconds = ms / 1000;
  if (seconds < 60) return `${Number(seconds.toFixed(1))} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return rest(`${minutes} min`, Math.round(seconds % 60), 's');
  return rest(`${Math.floor(minutes / 60)} h`, minutes % 60, 'min');
}

function rest(whole: string, part: number, unit: string): string {
  return part === 0 ? whole : `${whole} ${part} ${unit}`;
}

export function milliamps(value: number): string {
  return `${value.toFixed(0)} mA`;
}
