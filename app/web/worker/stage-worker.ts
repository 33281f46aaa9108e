/** The stage's own thread. */
import type { StageRequest } from './protocol.ts';
import { Stage, transferable } from './stage.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const stage = new Stage();

scope.onmessage = ({ data }: MessageEvent<StageRequest>) => {
  for (const reply of stage.answer(data)) scope.postMessage(reply, transferable(reply));
};
