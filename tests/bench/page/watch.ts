/**
 * What the page does and when, seen from outside: what its workers are told and say, when it draws, and when
 * a frame is done. Nothing of the page is changed. Times are milliseconds since navigation began.
 */
import type { Page } from 'playwright-core';
import type { LoftReply, LoftRequest, StageReply, StageRequest } from '../../../app/web/worker/protocol.ts';

export type Seen =
  /** A pointer moved with its button down; the time is the event's own. */
  | { readonly what: 'hand'; readonly at: number }
  | { readonly what: 'edit'; readonly at: number; readonly revision: number }
  /** The stage sent a frame for the picture. */
  | { readonly what: 'frame'; readonly at: number; readonly revision: number; readonly lit: boolean }
  /** The loft has woven every row of a cloth. `clip` is empty for the cloth of a whole look. */
  | { readonly what: 'cloth'; readonly at: number; readonly revision: number; readonly clip: string }
  /** WebGL has drawn. */
  | { readonly what: 'picture'; readonly at: number }
  /** A canvas on the loom has been painted: that of the clip in hand, or another. */
  | { readonly what: 'loom'; readonly at: number; readonly inHand: boolean }
  /** The browser has finished the frame that holds all the drawing before. */
  | { readonly what: 'shown'; readonly at: number };

interface Watching {
  seen: Seen[];
}

/** To be called before the page is opened. */
export async function watch(page: Page): Promise<void> {
  await page.addInitScript(watchInPage);
}

/** All that was seen since the last call. */
export function takeSeen(page: Page): Promise<Seen[]> {
  return page.evaluate(() => (window as unknown as Watching).seen.splice(0));
}

/** Runs in the page, before its own scripts. */
function watchInPage(): void {
  const seen: Seen[] = [];
  (window as unknown as Watching).seen = seen;
  const now = () => performance.now();

  window.addEventListener(
    'pointermove',
    ({ timeStamp, buttons }) => {
      if (buttons !== 0) seen.push({ what: 'hand', at: timeStamp });
    },
    { capture: true },
  );

  /** Which cloths are being woven, and how many of their rows have come. */
  const cloths = new Map<string, { clip: string; left: number }>();
  const told = (request: StageRequest | LoftRequest) => {
    if (request.kind === 'edit') seen.push({ what: 'edit', at: now(), revision: request.revision });
    if (request.kind !== 'weave') return;
    const { clip, revision, cloth, count } = request;
    const name = clip === undefined ? '' : `${clip.look}.${clip.track}.${clip.clip}`;
    cloths.set(`${revision} ${cloth}`, { clip: name, left: count });
  };
  const said = (reply: StageReply | LoftReply) => {
    if (reply.kind === 'moment' && reply.frame !== null) {
      const lit = reply.frame.drive.some((drive) => drive > 0);
      seen.push({ what: 'frame', at: now(), revision: reply.revision, lit });
    }
    if (reply.kind !== 'woven') return;
    const { revision, cloth, rows } = reply;
    const weaving = cloths.get(`${revision} ${cloth}`);
    if (weaving === undefined) return;
    weaving.left -= rows;
    if (weaving.left === 0) seen.push({ what: 'cloth', at: now(), revision, clip: weaving.clip });
  };
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }) => said(data));
    }
    override postMessage(message: never, ...rest: never[]) {
      told(message);
      super.postMessage(message, ...rest);
    }
  };

  let drawn = true;
  const inPlaceOf = (prototype: object, name: string, note: (context: { canvas: unknown }) => void) => {
    const methods = prototype as Record<string, (...given: unknown[]) => unknown>;
    const plain = methods[name]!;
    methods[name] = function (this: { canvas: unknown }, ...given) {
      const result = plain.apply(this, given);
      note(this);
      return result;
    };
  };
  const picture = () => {
    drawn = true;
    if (seen.at(-1)?.what !== 'picture') seen.push({ what: 'picture', at: now() });
  };
  for (const name of ['drawArrays', 'drawElements', 'drawArraysInstanced', 'drawElementsInstanced']) {
    inPlaceOf(WebGL2RenderingContext.prototype, name, picture);
  }
  inPlaceOf(CanvasRenderingContext2D.prototype, 'drawImage', ({ canvas }) => {
    const clip =
      canvas instanceof HTMLCanvasElement && canvas.isConnected ? canvas.closest('.loom .clip') : null;
    if (clip === null) return;
    drawn = true;
    const inHand =
      clip.matches('[aria-pressed="true"]') || clip.querySelector('[aria-pressed="true"]') !== null;
    seen.push({ what: 'loom', at: now(), inHand });
  });

  // A message that is posted while a frame is made arrives when the frame is done.
  const afterFrame = new MessageChannel();
  afterFrame.port1.onmessage = () => {
    if (!drawn) return;
    drawn = false;
    seen.push({ what: 'shown', at: now() });
  };
  const everyFrame = () => {
    afterFrame.port2.postMessage(null);
    requestAnimationFrame(everyFrame);
  };
  requestAnimationFrame(everyFrame);
}
