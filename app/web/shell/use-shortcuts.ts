/** Keys that work wherever the focus is. A text that is being written keeps its own. */
import { useEffect } from 'react';
import { useSession } from '../session/context.ts';
import { savePiece } from '../session/files.ts';
import type { Session } from '../session/session.ts';
import { isWriting } from './is-writing.ts';

type Deed = (session: Session) => void;

/** Without Ctrl, by the character. */
const plainKeys: Readonly<Record<string, Deed>> = {
  '?': ({ desk }) => desk.keysOpen.set(true),
  l: ({ desk }) => desk.large.set(!desk.large.get()),
  p: (session) => session.put({ paused: !session.playing.get().paused }),
};

export function useShortcuts(): void {
  const session = useSession();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.altKey || event.defaultPrevented) return;
      const deed = event.ctrlKey || event.metaKey ? commandOf(event) : plainOf(event);
      if (deed === undefined) return;
      event.preventDefault();
      deed(session);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [session]);
}

function commandOf({ key, shiftKey, target }: KeyboardEvent): Deed | undefined {
  const name = key.toLowerCase();
  if (name === 's') return savePiece;
  const writesText = target instanceof Element && target.closest('textarea, .monaco-editor') !== null;
  if (writesText) return undefined;
  if (name === 'z' && !shiftKey) return (session) => session.undo();
  return name === 'y' || name === 'z' ? (session) => session.redo() : undefined;
}

function plainOf({ key, repeat, target }: KeyboardEvent): Deed | undefined {
  if (repeat || isWriting(target) || document.querySelector('dialog[open]') !== null) return undefined;
  return plainKeys[key.toLowerCase()];
}
