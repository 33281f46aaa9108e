/** One stop of the Tab key for a row of things; the arrow keys go along the row. */
import { type KeyboardEvent, type RefObject, useRef, useState } from 'react';

interface Item {
  readonly 'data-rove': string;
  readonly tabIndex: 0 | -1;
  onFocus(): void;
  onKeyDown(event: KeyboardEvent): void;
}

interface Roving<Row> {
  readonly row: RefObject<Row | null>;
  /** The thing that the Tab key stops at. */
  readonly home: string | undefined;
  /** What each thing takes on. */
  item(key: string): Item;
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
export function useRoving<Row extends HTMLElement>(keys: readonly string[], first = keys[0]): Roving<Row> {
  const row = useRef<Row>(null);
  const [last, setLast] = useState<string | null>(null);
  const home = last !== null && keys.includes(last) ? last : first;
  const onKeyDown = (event: KeyboardEvent, key: string) => {
    const stride = strides[event.key];
    if (stride === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const to = Math.min(keys.length - 1, Math.max(0, keys.indexOf(key) + stride));
    row.current?.querySelector<HTMLElement>(`[data-rove="${CSS.escape(keys[to]!)}"]`)?.focus();
  };
  return {
    row,
    home,
    item: (key) => ({
      'data-rove': key,
      tabIndex: key === home ? 0 : -1,
      onFocus: () => setLast(key),
      onKeyDown: (event) => onKeyDown(event, key),
    }),
  };
}
