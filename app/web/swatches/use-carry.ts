/** Lets a hand take a swatch out of the book. A finger that moves sideways scrolls the book instead. */
import { type PointerEvent, useEffect, useRef, useState } from 'react';
import { isCarrying, takerAt, tellTaker } from './carry.ts';

interface Held {
  readonly pointer: number;
  readonly x: number;
  readonly y: number;
}

export interface CarriedAt {
  readonly x: number;
  readonly y: number;
}

interface Carrying {
  /** Where the swatch is on its way; null while it lies in the book. */
  readonly at: CarriedAt | null;
  readonly handlers: {
    onPointerDown(event: PointerEvent): void;
    onPointerMove(event: PointerEvent): void;
    onPointerUp(event: PointerEvent): void;
    onPointerCancel(): void;
    /** A swatch that was carried has not been clicked as well. */
    onClickCapture(event: React.MouseEvent): void;
  };
}

export function useCarry(pattern: string): Carrying {
  const [at, setAt] = useState<CarriedAt | null>(null);
  const held = useRef<Held | null>(null);
  const taker = useRef<Element | null>(null);
  const wasCarried = useRef(false);

  const letGo = (x: number, y: number) => {
    if (taker.current !== null) {
      tellTaker(taker.current, 'swatch-gone', { pattern, clientX: x, clientY: y });
    }
    taker.current = null;
    held.current = null;
    setAt(null);
  };

  useEffect(() => {
    if (at === null) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') letGo(at.x, at.y);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });

  return {
    at,
    handlers: {
      onPointerDown(event) {
        if (event.button !== 0) return;
        held.current = { pointer: event.pointerId, x: event.clientX, y: event.clientY };
        wasCarried.current = false;
        // A quick hand has left the card before its first move is heard.
        event.currentTarget.setPointerCapture(event.pointerId);
      },
      onPointerMove(event) {
        const from = held.current;
        if (from === null || from.pointer !== event.pointerId) return;
        const { clientX: x, clientY: y } = event;
        if (at === null && !isCarrying(from.x, from.y, x, y)) return;
        if (at === null) wasCarried.current = true;
        setAt({ x, y });
        const below = takerAt(x, y);
        const detail = { pattern, clientX: x, clientY: y };
        if (taker.current !== null && taker.current !== below) {
          tellTaker(taker.current, 'swatch-gone', detail);
        }
        taker.current = below;
        if (below !== null) tellTaker(below, 'swatch-above', detail);
      },
      onPointerUp({ clientX, clientY }) {
        const below = at === null || held.current === null ? null : takerAt(clientX, clientY);
        letGo(clientX, clientY);
        if (below !== null) tellTaker(below, 'swatch-dropped', { pattern, clientX, clientY });
      },
      onPointerCancel() {
        letGo(0, 0);
      },
      onClickCapture(event) {
        if (!wasCarried.current) return;
        wasCarried.current = false;
        event.preventDefault();
        event.stopPropagation();
      },
    },
  };
}
