/** Ctrl and the wheel, or two fingers on a touch pad, draw time larger about the pointer. */
import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { scrollAbout, zoomOfWheel } from './zoom.ts';

/** @param sheet what scrolls, with the loom's head at its top and its bed below */
export function useWheelZoom(
  sheet: RefObject<HTMLElement | null>,
  bed: RefObject<HTMLElement | null>,
  zoom: number,
  onZoom: (zoom: number) => void,
): void {
  const latest = useRef({ zoom, onZoom });
  latest.current = { zoom, onZoom };
  /** Where the sheet is to be once it has been laid out at the new scale. */
  const scrollTo = useRef<number | null>(null);

  useEffect(() => {
    const target = sheet.current;
    if (target === null) return;
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      const { zoom, onZoom } = latest.current;
      const next = zoomOfWheel(zoom, event.deltaY);
      if (next === zoom || bed.current === null) return;
      const handY = event.clientY - bed.current.getBoundingClientRect().top;
      scrollTo.current = scrollAbout(target.scrollTop, handY, zoom, next);
      onZoom(next);
    };
    // React's own wheel listeners are passive: they cannot keep the browser from scaling the page.
    target.addEventListener('wheel', onWheel, { passive: false });
    return () => target.removeEventListener('wheel', onWheel);
  }, [sheet, bed]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the sheet scrolls once it has been drawn at the new scale
  useLayoutEffect(() => {
    if (scrollTo.current !== null) sheet.current?.scrollTo({ top: scrollTo.current });
    scrollTo.current = null;
  }, [sheet, zoom]);
}
