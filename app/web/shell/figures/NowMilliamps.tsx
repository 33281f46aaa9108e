/** The current of the frame that is shown. */
import { useEffect, useRef } from 'react';
import { useSession } from '../../session/context.ts';
import { milliamps } from '../../session/words.ts';
import { readableEveryMs } from './readable.ts';

export function NowMilliamps() {
  const session = useSession();
  const text = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let shownAt = 0;
    let timer = 0;
    let latest = 0;
    const show = () => {
      timer = 0;
      shownAt = performance.now();
      if (text.current !== null) text.current.textContent = milliamps(latest);
    };
    const unlisten = session.frames.listen((frame) => {
      latest = frame.milliamps;
      const wait = shownAt + readableEveryMs - performance.now();
      if (timer === 0) timer = window.setTimeout(show, Math.max(0, wait));
    });
    return () => {
      unlisten();
      window.clearTimeout(timer);
    };
  }, [session]);
  return <span ref={text}>…</span>;
}
