/** Pulling something over the field of a course, by pointer. */
import { type PointerEvent, type RefObject, useRef } from 'react';
import { type Plot, timeAt, valueAt } from './curve.ts';
import type { Point } from './handles.ts';

interface PullHandlers {
  onPointerDown(event: PointerEvent): void;
  onPointerMove(event: PointerEvent): void;
  onPointerUp(event: PointerEvent): void;
  onPointerCancel(event: PointerEvent): void;
}

/** A click that trembles moves nothing. CSS pixels. */
const tremble = 3;

/**
 * @param held to the field's edges; handles may be pulled over them
 * @param onPull told where the pointer is, less the distance at which the thing was taken hold of
 */
export function usePull(
  plot: Plot,
  field: RefObject<HTMLElement | null>,
  start: Point,
  act: { take(): void; pull(to: Point): void; rest(): void },
  held = true,
): PullHandlers {
  const hold = useRef<{ x: number; y: number; from: Point; moving: boolean } | null>(null);
  const end = () => {
    if (hold.current?.moving) act.rest();
    hold.current = null;
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      event.stopPropagation();
      event.currentTarget.setPointerCapture(event.pointerId);
      hold.current = { x: event.clientX, y: event.clientY, from: start, moving: false };
      act.take();
    },
    onPointerMove(event) {
      const taken = hold.current;
      const box = field.current?.getBoundingClientRect();
      if (taken === null || box === undefined) return;
      const [dx, dy] = [event.clientX - taken.x, event.clientY - taken.y];
      if (!taken.moving && Math.hypot(dx, dy) < tremble) return;
      taken.moving = true;
      act.pull(moved(plot, taken.from, dx, dy, held));
    },
    onPointerUp: end,
    onPointerCancel: end,
  };
}

function moved(plot: Plot, from: Point, dx: number, dy: number, held: boolean): Point {
  const to = {
    ms: from.ms + (dy / plot.height) * plot.spanMs,
    value: from.value + (dx / plot.width) * (plot.max - plot.min),
  };
  if (!held) return to;
  return {
    ms: timeAt(plot, (to.ms / plot.spanMs) * plot.height),
    value: valueAt(plot, ((to.value - plot.min) / (plot.max - plot.min)) * plot.width),
  };
}
