/** The loft's own thread. */
import { Loft } from './loft.ts';
import type { LoftRequest } from './protocol.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const loft = new Loft((reply, transfer = []) => scope.postMessage(reply, transfer));

loft.tellLibrary();
scope.onmessage = ({ data }: MessageEvent<LoftRequest>) => loft.take(data);
