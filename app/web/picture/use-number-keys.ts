/** The number keys press the piece's buttons: 1 the first, 2 the second. */
import { useEffect } from 'react';
import { useSession } from '../session/context.ts';
import { isWriting } from '../shell/is-writing.ts';

/** @param buttons how many the piece has */
export function useNumberKeys(buttons: number): void {
  const session = useSession();
  useEffect(() => {
    const down = new Set<number>();
    const buttonOf = ({ code }: KeyboardEvent) => Number(/^(?:Digit|Numpad)(\d)$/.exec(code)?.[1] ?? 0) - 1;
    const press = (event: KeyboardEvent) => {
      const button = buttonOf(event);
      const plain = !(event.ctrlKey || event.metaKey || event.altKey);
      if (button < 0 || button >= buttons || !plain || event.repeat || isWriting(event.target)) return;
      if (document.querySelector('dialog[open]') !== null) return;
      down.add(button);
      session.press(button);
    };
    const release = (event: KeyboardEvent) => {
      const button = buttonOf(event);
      if (down.delete(button)) session.release(button);
    };
    const releaseAll = () => {
      for (const button of down) session.release(button);
      down.clear();
    };
    window.addEventListener('keydown', press);
    window.addEventListener('keyup', release);
    window.addEventListener('blur', releaseAll);
    return () => {
      releaseAll();
      window.removeEventListener('keydown', press);
      window.removeEventListener('keyup', release);
      window.removeEventListener('blur', releaseAll);
    };
  }, [session, buttons]);
}
