/** Timers that lead past the next look, as arcs over the thread. */
import { useLayoutEffect, useRef, useState } from 'react';
import type { Jump } from './leads.ts';

/** Where the thread runs below the top of the list, and how high an arc rises above it, in CSS pixels. */
const threadY = 30;
const arcTop = 4;

interface Props {
  readonly jumps: readonly Jump[];
  /** Of looks: another number has other places. */
  readonly count: number;
}

export function Jumps({ jumps, count }: Props) {
  const list = useRef<HTMLLIElement>(null);
  const [knots, setKnots] = useState<readonly number[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another number of beads has other places
  useLayoutEffect(() => {
    const thread = list.current?.parentElement;
    if (thread == null) return;
    const measure = () => {
      const beads = [...thread.querySelectorAll<HTMLElement>('li[data-bead]')];
      setKnots(beads.map((bead) => bead.offsetLeft + bead.offsetWidth / 2));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(thread);
    return () => observer.disconnect();
  }, [count]);
  return (
    <li className="jumps" ref={list} aria-hidden={jumps.length === 0}>
      {jumps.map(({ from, to, words }) => {
        const [start, end] = [knots[from] ?? 0, knots[to] ?? 0];
        const away = Math.sign(end - start) || 1;
        return (
          <span key={from}>
            <svg aria-hidden="true">
              <path d={arc(start + 8 * away, end - 9 * away)} />
              <path
                className="head"
                d={`M${end - 9 * away} ${threadY - 3} l${-7 * away} 0 l${3 * away} -6z`}
              />
            </svg>
            <span className="lead" data-kind="jump" style={{ left: `${start + 34 * away}px` }}>
              {words}
            </span>
          </span>
        );
      })}
    </li>
  );
}

function arc(start: number, end: number): string {
  const rise = threadY - 3;
  return `M${start} ${rise} C${start} ${arcTop} ${end} ${arcTop} ${end} ${rise}`;
}
