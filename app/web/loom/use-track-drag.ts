/** Drawing a track sideways by its head. A finger scrolls there; what the head opens does the same by buttons. */
import { type MouseEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { makingWay, placeAt } from '../thread/reorder.ts';
import { editTracks } from './edit-tracks.ts';

/** A hand that moves less than this, in CSS pixels, meant to open the head. */
const drawingBeyond = 6;

interface Drawn {
  readonly from: number;
  readonly to: number;
  /** From where the head stood, in CSS pixels. */
  readonly by: number;
  /** From one track to the next. */
  readonly step: number;
}

export interface TrackDraw {
  readonly drawn: boolean;
  /** Of the head from its place, in CSS pixels. */
  readonly offset: number;
  readonly handlers: {
    onPointerDown(event: PointerEvent): void;
    onPointerMove(event: PointerEvent): void;
    onPointerUp(): void;
    onPointerCancel(): void;
    onClickCapture(event: MouseEvent): void;
  };
}

/** @param bed with the tracks as `.warp[data-track]` */
export function useTrackDrag(bed: RefObject<HTMLElement | null>, look: Look): (track: number) => TrackDraw {
  const session = useSession();
  const hold = useRef<{ from: number; startX: number; centres: readonly number[] } | null>(null);
  const wasDrawn = useRef(false);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const end = () => {
    hold.current = null;
    setDrawn(null);
  };

  const handlersOf = (track: number): TrackDraw['handlers'] => ({
    onPointerDown({ button, pointerType, clientX }) {
      wasDrawn.current = false;
      if (button !== 0 || pointerType === 'touch' || bed.current === null) return;
      const warps = [...bed.current.querySelectorAll<HTMLElement>('.warp[data-track]')];
      const centres = warps.map((warp) => warp.offsetLeft + warp.offsetWidth / 2);
      hold.current = { from: track, startX: clientX, centres };
    },
    onPointerMove(event) {
      if (hold.current === null) return;
      const { from, startX, centres } = hold.current;
      const by = event.clientX - startX;
      if (drawn === null && Math.abs(by) <= drawingBeyond) return;
      if (drawn === null) event.currentTarget.setPointerCapture(event.pointerId);
      wasDrawn.current = true;
      const step = (centres[1] ?? 0) - (centres[0] ?? 0);
      setDrawn({ from, to: placeAt(centres, from, centres[from]! + by), by, step });
    },
    onPointerUp() {
      if (drawn !== null && drawn.to !== drawn.from) {
        const at = { look: look.name, track: drawn.from };
        editTracks(session, { kind: 'reorder-track', at, to: drawn.to });
      }
      end();
    },
    onPointerCancel: end,
    /** A head that was drawn has not been clicked as well. */
    onClickCapture(event) {
      if (!wasDrawn.current) return;
      wasDrawn.current = false;
      event.preventDefault();
      event.stopPropagation();
    },
  });

  return (track) => ({
    drawn: drawn?.from === track,
    offset: offsetOf(drawn, track),
    handlers: handlersOf(track),
  });
}

function offsetOf(drawn: Drawn | null, track: number): number {
  if (drawn === null) return 0;
  return track === drawn.from ? drawn.by : makingWay(track, drawn.from, drawn.to) * drawn.step;
}
