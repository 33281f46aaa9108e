/** Dragging up and down over an element moves the look's time. */
import { type PointerEvent, type RefObject, useRef } from 'react';
import { useSession } from '../session/context.ts';

interface ScrubHandlers {
  onPointerDown(event: PointerEvent): void;
  onPointerMove(event: PointerEvent): void;
  onPointerUp(event: PointerEvent): void;
  onPointerCancel(): void;
}

/**
 * @param bed the element whose height is one loop of the look
 * @param finger `drags` where nothing else can be meant; `taps` where a finger may just want to scroll past
 */
export function useScrub(
  bed: RefObject<HTMLElement | null>,
  lengthMilliseconds: number,
  finger: 'drags' | 'taps',
): ScrubHandlers {
  const session = useSession();
  const hand = useRef<'away' | 'drags' | 'taps'>('away');
  const scrub = (event: PointerEvent) => {
    const box = bed.current?.getBoundingClientRect();
    if (box === undefined || box.height === 0) return;
    const share = Math.min(1, Math.max(0, (event.clientY - box.top) / box.height));
    // The very end of a loop is the beginning of the next.
    session.scrub(Math.min(lengthMilliseconds - 1, Math.floor(share * lengthMilliseconds)));
  };
  const end = () => {
    if (hand.current === 'drags') session.endScrub();
    hand.current = 'away';
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      hand.current = event.pointerType === 'touch' ? finger : 'drags';
      if (hand.current === 'taps') return;
      event.currentTarget.setPointerCapture(event.pointerId);
      scrub(event);
    },
    onPointerMove(event) {
      if (hand.current === 'drags') scrub(event);
    },
    onPointerUp(event) {
      if (hand.current === 'taps') {
        hand.current = 'drags';
        scrub(event);
      }
      end();
    },
    // The browser takes the finger for scrolling.
    onPointerCancel: end,
  };
}
