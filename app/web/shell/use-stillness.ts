/** Whether the maker has asked the system for less motion. */
import { useSyncExternalStore } from 'react';

const query = window.matchMedia('(prefers-reduced-motion: reduce)');

function subscribe(listener: () => void): () => void {
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

export function useStillness(): boolean {
  return useSyncExternalStore(subscribe, () => query.matches);
}
