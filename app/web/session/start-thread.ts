/** Starts one of the two workers. */
import type { ThreadName } from '../worker/thread.ts';

export function startThread(name: ThreadName): Worker {
  return new Worker(new URL('../worker/thread.ts', import.meta.url), { type: 'module', name });
}
