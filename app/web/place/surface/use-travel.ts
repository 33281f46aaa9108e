/** Zoom and pan of a table: wheel, pinch, two fingers, middle button, space with a drag. */
import { type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { SurfaceView } from './context.ts';
import { pointInView } from './use-view.ts';

/** A notch of a wheel is about 100 pixels; seven of them double. */
const zoomPerPixel = 2 ** (1 / 700);
/** A pinch on a touch pad comes as a wheel with Ctrl, in smaller portions. */
const pinchPerPixel = 2 ** (1 / 70);
/** Wheels that count lines or pages instead of pixels. */
const pixelsPerUnit = [1, 16, 400] as const;

interface Travel {
  onPointerDownCapture(event: PointerEvent): void;
  onPointerMoveCapture(event: PointerEvent): void;
  onPointerUpCapture(event: PointerEvent): void;
  onPointerCancelCapture(event: PointerEvent): void;
}

export function useTravel(frame: RefObject<HTMLDivElement | null>, view: SurfaceView): Travel {
  const latest = useRef(view);
  useEffect(() => {
    latest.current = view;
  });
  const space = useSpaceKey();
  const fingers = useRef(new Map<number, Point>());
  const pushing = useRef<number | null>(null);

  useEffect(() => {
    const element = frame.current!;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const unit = pixelsPerUnit[event.deltaMode] ?? 1;
      if (event.shiftKey) {
        latest.current.push({ x: -(event.deltaX || event.deltaY) * unit, y: 0 });
        return;
      }
      const factor = (event.ctrlKey ? pinchPerPixel : zoomPerPixel) ** (-event.deltaY * unit);
      latest.current.zoom(factor, pointInView(element, event));
      if (event.deltaX !== 0) latest.current.push({ x: -event.deltaX * unit, y: 0 });
    };
    // React's own wheel listeners are passive: they cannot keep the page from scrolling.
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [frame]);

  const lift = (event: PointerEvent) => {
    const wasTravel = fingers.current.size > 1 || pushing.current === event.pointerId;
    fingers.current.delete(event.pointerId);
    if (pushing.current === event.pointerId) pushing.current = null;
    if (wasTravel) event.stopPropagation();
  };

  return {
    onPointerDownCapture(event) {
      if (event.pointerType === 'touch') {
        fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
        if (fingers.current.size < 2) return;
        view.pull.current?.bail?.();
        event.stopPropagation();
        return;
      }
      if (event.button !== 1 && !(event.button === 0 && space.current)) return;
      event.preventDefault();
      event.stopPropagation();
      pushing.current = event.pointerId;
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
      frame.current!.setPointerCapture(event.pointerId);
    },
    onPointerMoveCapture(event) {
      const before = fingers.current.get(event.pointerId);
      if (before === undefined) return;
      const here = { x: event.clientX, y: event.clientY };
      const others = [...fingers.current].filter(([id]) => id !== event.pointerId);
      fingers.current.set(event.pointerId, here);
      const by = { x: here.x - before.x, y: here.y - before.y };
      if (pushing.current === event.pointerId) {
        view.push(by);
        return;
      }
      const other = others[0]?.[1];
      if (other === undefined) return;
      event.stopPropagation();
      // Each of two fingers moves the table by half of its own way, and stretches it about the other.
      view.push({ x: by.x / 2, y: by.y / 2 });
      const apart = distance(here, other) / Math.max(1, distance(before, other));
      view.zoom(apart, pointInView(frame.current!, { clientX: other.x, clientY: other.y }));
    },
    onPointerUpCapture: lift,
    onPointerCancelCapture: lift,
  };
}

/** Whether the space bar is down while nothing is focused that it would press. */
function useSpaceKey(): RefObject<boolean> {
  const down = useRef(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === ' ') down.current = event.type === 'keydown';
    };
    const letGo = () => {
      down.current = false;
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('keyup', onKey);
    window.addEventListener('blur', letGo);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('keyup', onKey);
      window.removeEventListener('blur', letGo);
    };
  }, []);
  return down;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
