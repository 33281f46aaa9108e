/** Pixels that are pointed at, ringed in the picture; and the way to point at one there, by hand or by key. */
import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import type { PieceView } from '../worker/protocol.ts';
import { fitPlaces } from './fit.ts';
import { drawMarks } from './marks.ts';
import { nearestPixel } from './nearest.ts';
import { pixelWords } from './pixel-words.ts';

interface Props {
  readonly view: PieceView;
  readonly size: { readonly width: number; readonly height: number };
}

/** A hand is taken to mean the pixel within this reach, in CSS pixels. */
const reach = 26;

export function PixelMarks({ view, size }: Props) {
  const session = useSession();
  const piece = usePart(session.bench, ({ open }) => open?.piece);
  const pointed = useStore(session.desk.pointed);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { spots, pitch } = useMemo(
    () => fitPlaces(view.places, size.width, size.height),
    [view.places, size],
  );
  useEffect(() => {
    if (canvas.current !== null) drawMarks(canvas.current, size, spots, pitch, pointed);
  }, [size, spots, pitch, pointed]);

  const count = view.hidden.length;
  const [only] = pointed.length === 1 ? pointed : [];
  const words = only === undefined || piece === undefined ? null : pixelWords(piece, view, only);
  const point = (pixel: number | null) => {
    const now = session.desk.pointed.get();
    if (now.length === 1 && now[0] === pixel) return;
    session.desk.pointed.set(pixel === null ? [] : [pixel]);
  };
  const onPointer = (event: PointerEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    point(nearestPixel(spots, event.clientX - box.left, event.clientY - box.top, reach));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const at = session.desk.pointed.get()[0] ?? -1;
    const target = { ArrowRight: at + 1, ArrowUp: at + 1, ArrowLeft: at - 1, ArrowDown: at - 1, Home: 0 }[
      event.key
    ];
    const next = event.key === 'End' ? count - 1 : target;
    if (next === undefined) return;
    event.preventDefault();
    point(Math.min(count - 1, Math.max(0, next)));
  };

  return (
    <>
      {/* A canvas over the picture costs time with every frame, so there is one only while it is needed. */}
      {pointed.length > 0 && <canvas ref={canvas} className="marks" />}
      <div
        className="pointing"
        role="slider"
        tabIndex={0}
        aria-label="Point at a pixel"
        aria-valuemin={0}
        aria-valuemax={Math.max(0, count - 1)}
        aria-valuenow={only ?? 0}
        aria-valuetext={words ?? 'none'}
        onPointerDown={onPointer}
        onPointerMove={onPointer}
        onPointerLeave={() => point(null)}
        onKeyDown={onKeyDown}
        onBlur={() => point(null)}
      />
      {words !== null && only !== undefined && (
        <p
          className="pixel-words"
          data-left={spots[2 * only]! > size.width / 2}
          style={{ left: spots[2 * only]!, top: spots[2 * only + 1]! }}
        >
          {words}
        </p>
      )}
    </>
  );
}
