/** The camera of one table: fits what lies there until the maker moves it. */
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSize } from '../../cloth/use-size.ts';
import type { Box } from './box.ts';
import { type Camera, fitted, pushed, toTable, toView, type ViewSize, zoomed } from './camera.ts';
import type { SurfaceView } from './context.ts';
import type { Pull } from './pull.ts';

/** Where the camera stands: as the maker put it, or fitting a box that stays while runs are moved about. */
interface Stand {
  readonly opened: number;
  readonly home: Box;
  readonly put: Camera | null;
}

/**
 * @param whole a box around all that lies on the table; what is shown at first and when asked to fit
 * @param opened another number for another piece
 */
export function useView(
  frame: RefObject<HTMLDivElement | null>,
  side: Side,
  whole: Box,
  opened: number,
): SurfaceView {
  const size = useSize(frame);
  const pull = useRef<Pull | null>(null);
  const [stand, setStand] = useState<Stand>({ opened, home: whole, put: null });
  const isSamePiece = stand.opened === opened;
  if (!isSamePiece) setStand({ opened, home: whole, put: null });
  const { home, put } = isSamePiece ? stand : { home: whole, put: null };
  const camera = useMemo(() => put ?? fitted(home, atLeastOne(size)), [put, home, size]);

  // What gestures read that began before the camera moved.
  const now = useRef({ camera, size, whole });
  useEffect(() => {
    now.current = { camera, size, whole };
  });

  return useMemo(() => {
    const moveTo = (camera: Camera) => {
      now.current = { ...now.current, camera };
      setStand((before) => ({ ...before, put: camera }));
    };
    return {
      side,
      camera,
      size,
      millimetresPerPixel: camera.millimetresPerPixel,
      toMillimetres(clientX, clientY) {
        const { camera, size } = now.current;
        return toTable(camera, size, pointInView(frame.current!, { clientX, clientY }));
      },
      toView: (at) => toView(camera, size, at),
      zoom(factor, at) {
        const { camera, size } = now.current;
        moveTo(zoomed(camera, size, at ?? { x: size.width / 2, y: size.height / 2 }, factor));
      },
      push: (by) => moveTo(pushed(now.current.camera, by)),
      fit: (box) => setStand((before) => ({ ...before, home: box ?? now.current.whole, put: null })),
      pull,
    };
  }, [side, camera, size, frame]);
}

function atLeastOne({ width, height }: ViewSize): ViewSize {
  return { width: Math.max(width, 1), height: Math.max(height, 1) };
}

/** From the corner of what is drawn in, inside of the frame's border. */
export function pointInView(
  frame: Element,
  at: { readonly clientX: number; readonly clientY: number },
): Point {
  const box = frame.getBoundingClientRect();
  return { x: at.clientX - box.left - frame.clientLeft, y: at.clientY - box.top - frame.clientTop };
}
