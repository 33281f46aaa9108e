/** The playhead across a course, held at the side where time is written. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import { useSession } from '../../session/context.ts';
import { time } from '../measures.ts';
import type { Moving } from './curve.ts';
import { clipTimeAt, type Times } from './span.ts';
import { useKeyHand } from './use-key-hand.ts';

interface Props {
  readonly parameter: Moving;
  readonly times: Times;
  readonly spanMs: number;
  readonly bed: RefObject<HTMLElement | null>;
}

const stepMs = 100;
const pageMs = 1000;
/** How often the time is told to assistive technology while it runs by itself. */
const toldEveryMs = 1000;

export function Needle({ parameter, times, spanMs, bed }: Props) {
  const session = useSession();
  const keys = useKeyHand(parameter);
  const line = useRef<HTMLDivElement>(null);
  const grip = useRef<HTMLDivElement>(null);
  const holds = useRef(false);
  /** Where keys have sent the playhead, until it is heard to be there: the next key counts from here. */
  const sought = useRef<number | null>(null);

  useEffect(() => {
    let toldMs = Number.NEGATIVE_INFINITY;
    return session.moments.listen(({ ms, paused }) => {
      const now = clipTimeAt(times, ms);
      if (!paused || now === sought.current) sought.current = null;
      line.current?.style.setProperty('top', `${Math.min(100, (now / spanMs) * 100)}%`);
      if (!paused && Math.abs(now - toldMs) < toldEveryMs) return;
      toldMs = now;
      grip.current?.setAttribute('aria-valuenow', String(Math.floor(now)));
      grip.current?.setAttribute('aria-valuetext', time.text(Math.floor(now)));
    });
  }, [session, times, spanMs]);

  const scrub = (event: PointerEvent) => {
    const box = bed.current?.getBoundingClientRect();
    if (box === undefined || box.height === 0) return;
    keys.scrubTo(Math.min(1, Math.max(0, (event.clientY - box.top) / box.height)) * spanMs);
  };
  const end = () => {
    if (holds.current) keys.endScrub();
    holds.current = false;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const now = sought.current ?? keys.playheadMs();
    const target = {
      ArrowDown: now + stepMs,
      ArrowRight: now + stepMs,
      ArrowUp: now - stepMs,
      ArrowLeft: now - stepMs,
      PageDown: now + pageMs,
      PageUp: now - pageMs,
      Home: 0,
      End: spanMs,
    }[event.key];
    if (target === undefined) return;
    event.preventDefault();
    sought.current = Math.min(spanMs, Math.max(0, target));
    keys.scrubTo(sought.current);
    keys.endScrub();
  };
  return (
    <>
      <div
        ref={grip}
        className="course-scrub"
        role="slider"
        tabIndex={0}
        aria-label="Time in the clip"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={spanMs}
        aria-valuenow={0}
        onKeyDown={onKeyDown}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          holds.current = true;
          sought.current = null;
          scrub(event);
        }}
        onPointerMove={(event) => holds.current && scrub(event)}
        onPointerUp={end}
        onPointerCancel={end}
      />
      <div className="course-needle" ref={line} aria-hidden="true" />
    </>
  );
}
