/** The moment of the look that is shown, and the way to seek another. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { duration } from '../session/words.ts';

interface Props {
  readonly lengthMilliseconds: number;
  readonly tickMilliseconds: number;
}

/** How often the value is told to assistive technology while it moves by itself. */
const toldEveryMs = 1000;

export function TimeSlider({ lengthMilliseconds, tickMilliseconds }: Props) {
  const session = useSession();
  const slider = useRef<HTMLInputElement>(null);
  const clock = useRef<HTMLOutputElement>(null);

  // Sixty times a second past React, straight to the two elements.
  useEffect(() => {
    let toldMs = Number.NEGATIVE_INFINITY;
    return session.moments.listen(({ ms, paused }) => {
      const now = ms % lengthMilliseconds;
      const input = slider.current;
      if (input === null) return;
      input.value = String(now);
      input.style.setProperty('--share', `${(now / lengthMilliseconds) * 100}%`);
      if (clock.current !== null) clock.current.textContent = `${(now / 1000).toFixed(1)} s`;
      if (!paused && Math.abs(now - toldMs) < toldEveryMs) return;
      toldMs = now;
      const words = `${(now / 1000).toFixed(2)} s of ${duration(lengthMilliseconds)}`;
      input.setAttribute('aria-valuetext', words);
    });
  }, [session, lengthMilliseconds]);

  const rest = () => session.endScrub();
  return (
    <div className="moment">
      <input
        ref={slider}
        id="moment"
        type="range"
        aria-label="Moment"
        min={0}
        max={lengthMilliseconds - 1}
        step={tickMilliseconds}
        defaultValue={0}
        onInput={(event) => session.scrub(Number(event.currentTarget.value))}
        onPointerUp={rest}
        onPointerCancel={rest}
        onKeyUp={rest}
        onBlur={rest}
      />
      <output ref={clock} htmlFor="moment" aria-live="off">
        0.0 s
      </output>
    </div>
  );
}
