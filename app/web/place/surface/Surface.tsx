/**
 * A table on which runs lie, on one side: an SVG that fills its box, in pixels with y down. What is drawn
 * in it stands inside `<World>`, in millimetres with y up, or asks `useCamera` where a point stands.
 */
import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Box } from './box.ts';
import { SurfaceContext, type SurfaceView, useCamera } from './context.ts';
import { Grid } from './Grid.tsx';
import { ScaleBar } from './ScaleBar.tsx';
import { useTravel } from './use-travel.ts';
import { useView } from './use-view.ts';
import '../../styles/place-table.css';

interface Props {
  readonly side: Side;
  readonly label: string;
  readonly whole: Box;
  readonly opened: number;
  /** Lies under the grid: a picture of the garment. */
  readonly under?: ReactNode;
  /** From below to above. */
  readonly children: ReactNode;
  /** Stands beside the drawing in the frame: words, buttons. */
  readonly aside?: ReactNode;
  /** The pointer goes down where nothing lies. */
  onBareDown?(event: PointerEvent<SVGSVGElement>, view: SurfaceView): void;
  /** What the table itself does not know. */
  onKey?(event: KeyboardEvent, view: SurfaceView): void;
}

export function Surface({ side, label, whole, opened, under, children, aside, onBareDown, onKey }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const view = useView(frame, side, whole, opened);
  const travel = useTravel(frame, view);
  const { width, height } = view.size;
  return (
    <SurfaceContext value={view}>
      <div className="surface" data-side={side} ref={frame} {...travel}>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset. */}
        <svg
          width={width}
          height={height}
          role="group"
          aria-label={label}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
          tabIndex={0}
          onPointerDown={(event) => onBareDown?.(event, view)}
          onKeyDown={(event) => onKey?.(event, view)}
        >
          {under}
          <Grid />
          {width > 0 && children}
          <ScaleBar />
        </svg>
        {aside}
      </div>
    </SurfaceContext>
  );
}

/** Children in millimetres, y up. Widths that should not follow the zoom use `vector-effect`. */
export function World({ children, className }: { children: ReactNode; className?: string }) {
  const { camera, size } = useCamera();
  const scale = 1 / camera.millimetresPerPixel;
  const x = size.width / 2 - camera.middle.x * scale;
  const y = size.height / 2 + camera.middle.y * scale;
  return (
    <g
      className={className}
      transform={`matrix(${scale} 0 0 ${-scale} ${x} ${y})`}
      style={{ '--pixel': `${camera.millimetresPerPixel}px` } as React.CSSProperties}
    >
      {children}
    </g>
  );
}
