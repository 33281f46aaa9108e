/** The table that a component lies on: its side, its camera, and how to get from the screen to millimetres. */
import { createContext, useContext } from 'react';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Box } from './box.ts';
import type { Camera, ViewSize } from './camera.ts';
import type { Pull } from './pull.ts';

export interface SurfaceView {
  readonly side: Side;
  readonly camera: Camera;
  readonly size: ViewSize;
  readonly millimetresPerPixel: number;
  /** The point of the table under a point of the window. True at any time, also in the middle of a drag. */
  toMillimetres(clientX: number, clientY: number): Point;
  /** Where a point of the table stands in the view, in pixels from its upper left corner. */
  toView(at: Point): Point;
  /** @param at in the view; its middle where left out */
  zoom(factor: number, at?: Point): void;
  /** @param by pixels */
  push(by: Point): void;
  /** Shows a box, or all that lies on the table. */
  fit(box?: Box): void;
  /** What the pointer is doing; a second finger ends it. */
  readonly pull: { current: Pull | null };
}

export const SurfaceContext = createContext<SurfaceView | null>(null);

export function useCamera(): SurfaceView {
  const view = useContext(SurfaceContext);
  if (view === null) throw new Error('A component stands outside of a table.');
  return view;
}
