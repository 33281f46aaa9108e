/** The playhead: a weft thread across the loom with a shuttle to hold it by. */
import { type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { duration } from '../session/words.ts';
import { useScrub } from './use-scrub.ts';

interface Props {
  readonly lengthMilliseconds: number;
  readonly tickMilliseconds: number;
  readonly bed: RefObject<HTMLElement | null>;
}

/** How often the shuttle's value is told to assistive technology while it moves by itself. */
const toldEveryMs = 1000;

export function Shuttle({ lengthMilliseconds, tickMilliseconds, bed }: Props) {
  const session = useSession();
  const line = useRef<HTMLDivElement>(null);
  const handle = useRef<HTMLDivElement>(null);
  const scrub = useScrub(bed, lengthMilliseconds, 'drags');

  useEffect(() => {
    let toldMs = Number.NEGATIVE_INFINITY;
    return session.moments.listen(({ ms, paused }) => {
      const now = ms % lengthMilliseconds;
      line.current?.style.setProperty('top', `${(now / lengthMilliseconds) * 100}%`);
      if (!paused && Math.abs(now - toldMs) < toldEveryMs) return;
      toldMs = now;
      handle.current?.setAttribute('aria-valuenow', String(Math.floor(now)));
      handle.current?.setAttribute(
        'aria-valuetext',
        `${(now / 1000).toFixed(2)} s of ${duration(lengthMilliseconds)}`,
      );
    });
  }, [session, lengthMilliseconds]);

  const onKeyDown = (event: KeyboardEvent) => {
    const now = (session.moments.latest?.ms ?? 0) % lengthMilliseconds;
    const target = {
      ArrowDown: now + tickMilliseconds,
      ArrowRight: now + tickMilliseconds,
      ArrowUp: now - tickMilliseconds,
      ArrowLeft: now - tickMilliseconds,
      PageDown: now + 1000,
      PageUp: now - 1000,
      Home: 0,
      End: lengthMilliseconds - 1,
    }[event.key];
    if (target === undefined) return;
    event.preventDefault();
    session.scrub(Math.min(lengthMilliseconds - 1, Math.max(0, target)));
    session.endScrub();
  };

  return (
    <div className="playhead" ref={line}>
      <div
        ref={handle}
        className="shuttle"
        role="slider"
        tabIndex={0}
        aria-label="Time in the look"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={lengthMilliseconds}
        aria-valuenow={0}
        onKeyDown={onKeyDown}
        {...scrub}
      >
        <svg viewBox="0 0 30 12" aria-hidden="true">
          <path d="M0 6 C6 0 24 0 30 6 C24 12 6 12 0 6Z" />
          <ellipse cx="15" cy="6" rx="6" ry="1.8" />
        </svg>
      </div>
    </div>
  );
}
