/** A value outside React that React can read. Frames and other hot data use a `Feed` and skip React. */
import { useSyncExternalStore } from 'react';

export class Store<T> {
  private readonly listeners = new Set<() => void>();

  constructor(private value: T) {}

  readonly get = (): T => this.value;

  set(next: T): void {
    if (Object.is(next, this.value)) return;
    this.value = next;
    for (const listener of this.listeners) listener();
  }

  merge(change: Partial<T>): void {
    this.set({ ...this.value, ...change });
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
}

export function useStore<T>(store: Store<T>): T {
  return useSyncExternalStore(store.subscribe, store.get);
}

/** The part of a store that a component shows; it is drawn again only when that part is another value. */
export function usePart<T, P>(store: Store<T>, part: (value: T) => P): P {
  return useSyncExternalStore(store.subscribe, () => part(store.get()));
}

/** Values that come many times a second and go straight to a canvas. */
export class Feed<T> {
  private readonly listeners = new Set<(value: T) => void>();
  latest: T | null = null;

  send(value: T): void {
    this.latest = value;
    for (const listener of this.listeners) listener(value);
  }

  /** The listener hears the latest value at once, if there is one. */
  listen(listener: (value: T) => void): () => void {
    this.listeners.add(listener);
    if (this.latest !== null) listener(this.latest);
    return () => this.listeners.delete(listener);
  }
}
