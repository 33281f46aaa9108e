/** The keyboard's way to every pull at a clip. */
import type { Grip } from './grip.ts';

export type ClipTask = 'split' | 'again' | 'copy' | 'cut' | 'remove';

export type ClipKey =
  | { readonly kind: 'pull'; readonly grip: Grip; readonly by: number; readonly tracks: number }
  | { readonly kind: 'task'; readonly task: ClipTask }
  | { readonly kind: 'column'; readonly by: 1 | -1 };

type Pressed = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>;

const fineMilliseconds = 100;
const coarseMilliseconds = 1000;

const steps: Readonly<Record<string, number>> = {
  ArrowUp: -fineMilliseconds,
  ArrowDown: fineMilliseconds,
  PageUp: -coarseMilliseconds,
  PageDown: coarseMilliseconds,
};

const fades: Readonly<Record<string, readonly [Grip, number]>> = {
  i: ['fade-in', fineMilliseconds],
  I: ['fade-in', -fineMilliseconds],
  // Pulled up, a fade-out grows.
  o: ['fade-out', -fineMilliseconds],
  O: ['fade-out', fineMilliseconds],
};

const tasks: Readonly<Record<string, ClipTask>> = { s: 'split', Delete: 'remove', Backspace: 'remove' };
const withControl: Readonly<Record<string, ClipTask>> = { d: 'again', c: 'copy', x: 'cut' };

/** Null for a key that a clip has no use for. */
export function clipKey({ key, shiftKey, altKey, ctrlKey, metaKey }: Pressed): ClipKey | null {
  if (ctrlKey || metaKey) {
    const task = withControl[key.toLowerCase()];
    return task === undefined || shiftKey || altKey ? null : { kind: 'task', task };
  }
  const by = steps[key];
  if (by !== undefined) {
    const grip = altKey ? (shiftKey ? 'start' : 'end') : 'whole';
    return { kind: 'pull', grip, by, tracks: 0 };
  }
  if (altKey) return null;
  if (key === 'ArrowLeft' || key === 'ArrowRight') {
    return { kind: 'pull', grip: 'whole', by: 0, tracks: key === 'ArrowLeft' ? -1 : 1 };
  }
  if (key === ',' || key === '.') return { kind: 'column', by: key === ',' ? -1 : 1 };
  const fade = fades[key];
  if (fade !== undefined) return { kind: 'pull', grip: fade[0], by: fade[1], tracks: 0 };
  const task = tasks[key];
  return task === undefined ? null : { kind: 'task', task };
}
