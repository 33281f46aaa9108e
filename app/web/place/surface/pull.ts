/** One drag of the pointer on a table, from down to up; or a click, where it hardly moved. */
import type { PointerEvent as PointerDown } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { SurfaceView } from './context.ts';

export interface Moment {
  readonly from: Point;
  readonly to: Point;
  /** Alt: nothing snaps. */
  readonly free: boolean;
  readonly shift: boolean;
}

/** What becomes of the pull. `move` is called only once it has gone farther than a trembling hand. */
export interface Pull {
  move?(moment: Moment, event: PointerEvent): void;
  /** Released after a move. */
  end?(moment: Moment): void;
  /** Released where it began. */
  click?(moment: Moment): void;
  /** Escape, a second finger, or the browser takes it away: as if it had not been. */
  bail?(): void;
}

/** Pixels that a click may tremble. */
const tremble = { mouse: 3, pen: 5, touch: 8 } as const;

/** Follows the pointer that went down, wherever it goes. */
export function startPull(down: PointerDown<Element>, view: SurfaceView, pull: Pull): void {
  if (down.button !== 0) return;
  down.stopPropagation();
  const { pointerId, clientX, clientY } = down;
  const element = down.currentTarget;
  const from = view.toMillimetres(clientX, clientY);
  const slack = tremble[down.pointerType as keyof typeof tremble] ?? tremble.mouse;
  let moved = false;
  const momentOf = (event: PointerEvent): Moment => ({
    from,
    to: view.toMillimetres(event.clientX, event.clientY),
    free: event.altKey,
    shift: event.shiftKey,
  });
  const listening = new AbortController();
  const over = () => {
    listening.abort();
    view.pull.current = null;
  };
  const options = { signal: listening.signal };
  element.setPointerCapture(pointerId);
  view.pull.current = {
    bail() {
      over();
      pull.bail?.();
    },
  };
  const onMove = (event: Event) => {
    if (!(event instanceof PointerEvent) || event.pointerId !== pointerId) return;
    moved ||= Math.hypot(event.clientX - clientX, event.clientY - clientY) > slack;
    if (moved) pull.move?.(momentOf(event), event);
  };
  const onUp = (event: Event) => {
    if (!(event instanceof PointerEvent) || event.pointerId !== pointerId) return;
    over();
    if (moved) pull.end?.(momentOf(event));
    else pull.click?.(momentOf(event));
  };
  element.addEventListener('pointermove', onMove, options);
  element.addEventListener('pointerup', onUp, options);
  element.addEventListener('pointercancel', () => view.pull.current?.bail?.(), options);
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      view.pull.current?.bail?.();
    },
    { ...options, capture: true },
  );
}
