/**
 * Both workers run this file, each by its own name: what they have in common is fetched once, as only parts of
 * one script can share files.
 */
import type { LoftRequest, StageRequest } from './protocol.ts';

export type ThreadName = 'stage' | 'loft';

const scope = self as unknown as DedicatedWorkerGlobalScope;

const roles: Record<ThreadName, () => Promise<(request: never) => void>> = {
  async stage() {
    const { Stage, transferable } = await import('./stage.ts');
    const stage = new Stage();
    return (request: StageRequest) => {
      for (const reply of stage.answer(request)) scope.postMessage(reply, transferable(reply));
    };
  },
  async loft() {
    const { Loft } = await import('./loft.ts');
    const loft = new Loft((reply, transfer = []) => scope.postMessage(reply, transfer));
    loft.tellLibrary();
    return (request: LoftRequest) => loft.take(request);
  },
};

/** What the page says before the role has come. */
const early: never[] = [];
scope.onmessage = ({ data }) => early.push(data as never);
const take = await roles[scope.name as ThreadName]();
scope.onmessage = ({ data }) => take(data as never);
for (const request of early) take(request);
