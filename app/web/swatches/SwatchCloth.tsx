/** The moving picture of a swatch. It moves only while it is in view, and never for those who want stillness. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { useSize } from '../cloth/use-size.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { useStillness } from '../shell/use-stillness.ts';
import { drawSwatching, everyFrame, swatchingOf } from './scrolling.ts';
import type { Swatch } from './swatch.ts';

interface Props {
  readonly swatch: Pick<Swatch, 'pattern' | 'own'>;
  /** A hand or the keyboard is at it: it moves even while the piece is paused. */
  readonly touched?: boolean;
}

/** What stands still shows its first moments. */
const stillAt = 0;

export function SwatchCloth({ swatch: { pattern, own }, touched = false }: Props) {
  const session = useSession();
  const levels = useStore(session.loft.swatches.sheetOf(pattern, own));
  const swatching = useMemo(() => (levels === null ? null : swatchingOf(levels)), [levels]);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useSize(canvas);
  const inView = useInView(canvas);
  const still = useStillness();
  const paused = usePart(session.playing, (playing) => playing.paused);
  const moves = inView && !still && (!paused || touched);

  useEffect(() => {
    const target = canvas.current;
    if (target === null || swatching === null || size.width === 0) return;
    target.width = Math.round(size.width * devicePixelRatio);
    target.height = Math.round(size.height * devicePixelRatio);
    if (moves) return everyFrame((now) => drawSwatching(target, swatching, now));
    drawSwatching(target, swatching, stillAt);
  }, [swatching, size, moves]);

  return <canvas ref={canvas} className="swatch-cloth" data-drawn={swatching !== null} />;
}

function useInView(element: React.RefObject<Element | null>): boolean {
  const [inView, setInView] = useState(false);
  useEffect(() => {
    const target = element.current;
    if (target === null) return;
    const observer = new IntersectionObserver((entries) =>
      setInView(entries.at(-1)?.isIntersecting === true),
    );
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return inView;
}
