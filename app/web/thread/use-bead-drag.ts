/** Drawing a bead along the thread by mouse, or by its knot with a finger. */
import { type PointerEvent, type RefObject, useRef, useState } from 'react';
import { makingWay, placeAt } from './reorder.ts';

interface Drawn {
  readonly from: number;
  readonly to: number;
  /** From where the bead hung, in CSS pixels. */
  readonly by: number;
  /** From one bead to the next. */
  readonly step: number;
}

interface Hold {
  readonly from: number;
  readonly startX: number;
  readonly scrolled: number;
  readonly centres: readonly number[];
}

/** A hand that moves less than this, in CSS pixels, meant to click. */
const drawingBeyond = 6;
/** This near to an end of the thread's window it runs along, by so much each time. */
const edge = 44;
const haul = 14;

/**
 * @param thread what scrolls, with the beads as `li[data-bead]`
 * @param onReorder told once, when the hand lets go of a bead that has come to another place
 */
export function useBeadDrag(
  thread: RefObject<HTMLElement | null>,
  onReorder: (from: number, to: number) => void,
) {
  const hold = useRef<Hold | null>(null);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const wasDrawn = useRef(false);

  const end = () => {
    hold.current = null;
    setDrawn(null);
  };
  const handlers = (index: number) => ({
    onPointerDown(event: PointerEvent) {
      if (event.button !== 0 || thread.current === null) return;
      // A finger elsewhere than on the knot scrolls the thread.
      const onKnot = event.target instanceof Element && event.target.closest('.bead-knot') !== null;
      if (event.pointerType === 'touch' && !onKnot) return;
      const beads = [...thread.current.querySelectorAll<HTMLElement>('li[data-bead]')];
      const centres = beads.map((bead) => bead.offsetLeft + bead.offsetWidth / 2);
      hold.current = { from: index, startX: event.clientX, scrolled: thread.current.scrollLeft, centres };
      wasDrawn.current = false;
    },
    onPointerMove(event: PointerEvent) {
      const held = hold.current;
      const bed = thread.current;
      if (held === null || bed === null) return;
      if (drawn === null && Math.abs(event.clientX - held.startX) <= drawingBeyond) return;
      if (drawn === null) event.currentTarget.setPointerCapture(event.pointerId);
      wasDrawn.current = true;
      const box = bed.getBoundingClientRect();
      if (event.clientX < box.left + edge) bed.scrollLeft -= haul;
      if (event.clientX > box.right - edge) bed.scrollLeft += haul;
      const by = event.clientX - held.startX + bed.scrollLeft - held.scrolled;
      const to = placeAt(held.centres, held.from, held.centres[held.from]! + by);
      const step = (held.centres[1] ?? 0) - (held.centres[0] ?? 0);
      setDrawn({ from: held.from, to, by, step });
    },
    onPointerUp() {
      if (drawn !== null && drawn.to !== drawn.from) onReorder(drawn.from, drawn.to);
      end();
    },
    onPointerCancel: end,
    /** A bead that was drawn has not been clicked as well. */
    onClickCapture(event: React.MouseEvent) {
      if (!wasDrawn.current) return;
      wasDrawn.current = false;
      event.preventDefault();
      event.stopPropagation();
    },
  });
  /** How far a bead hangs from its place while one is drawn. */
  const offset = (index: number): number => {
    if (drawn === null) return 0;
    if (index === drawn.from) return drawn.by;
    return makingWay(index, drawn.from, drawn.to) * drawn.step;
  };
  return { drawn: drawn?.from ?? null, handlers, offset, cancel: end };
}
