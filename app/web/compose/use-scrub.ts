/** Dragging up and down over an element moves the look's time. */
import { type PointerEvent, type RefObject, useRef } from 'react';
import { useSession } from '../session/context.ts';

interface ScrubHandlers {
  onPointerDown(event: PointerEvent): void;
  onPointerMove(event: PointerEvent): void;
  onPointerUp(): void;
  onPointerCancel(): void;
}

/** @param bed the element whose height is one loop of the look */
export function useScrub(bed: RefObject<HTMLElement | null>, lengthMilliseconds: number): ScrubHandlers {
  const session = useSession();
  const dragging = useRef(false);
  const scrub = (event: PointerEvent) => {
    const box = bed.current?.getBoundingClientRect();
    if (box === undefined || box.height === 0) return;
    const share = Math.min(1, Math.max(0, (event.clientY - box.top) / box.height));
    // The very end of a loop is the beginning of the next.
    session.scrub(Math.min(lengthMilliseconds - 1, Math.floor(share * lengthMilliseconds)));
  };
  const end = () => {
    if (!dragging.current) return;
    dragging.current = false;
    session.endScrub();
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      dragging.current = true;
      scrub(event);
    },
    onPointerMove(event) {
      if (dragging.current) scrub(event);
    },
    onPointerUp: end,
    onPointerCancel: end,
  };
}
