/** One stop of the Tab key for a row of things; the arrow keys go along the row. */
import { type KeyboardEvent, type RefObject, useRef, useState } from 'react';

interface Roving {
  readonly row: RefObject<HTMLElement | null>;
  onKeyDown(event: KeyboardEvent): void;
  /** The thing that the Tab key stops at. */
  readonly home: string | undefined;
  /** What each thing takes on. */
  item(key: string): { 'data-rove': string; tabIndex: 0 | -1; onFocus: () => void };
}

const strides: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowLeft: -1,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/**
 * @param keys of the things in their order
 * @param first where the Tab key stops as long as nothing of the row has been focused
 */
export function useRoving(keys: readonly string[], first = keys[0]): Roving {
  const row = useRef<HTMLElement>(null);
  const [last, setLast] = useState<string | null>(null);
  const home = last !== null && keys.includes(last) ? last : first;
  return {
    row,
    home,
    item: (key) => ({
      'data-rove': key,
      tabIndex: key === home ? 0 : -1,
      onFocus: () => setLast(key),
    }),
    onKeyDown(event) {
      const stride = strides[event.key];
      const from = (event.target as Element).closest<HTMLElement>('[data-rove]')?.dataset.rove;
      if (stride === undefined || from === undefined) return;
      if (event.altKey || event.ctrlKey || event.metaKey || event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      const to = Math.min(keys.length - 1, Math.max(0, keys.indexOf(from) + stride));
      row.current?.querySelector<HTMLElement>(`[data-rove="${CSS.escape(keys[to]!)}"]`)?.focus();
    },
  };
}
