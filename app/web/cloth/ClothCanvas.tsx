/** A cloth on a canvas: woven by the loft, painted row by row as it comes. */
import { useEffect, useMemo, useRef } from 'react';
import type { ClothPlan } from '../session/cloths.ts';
import { useSession } from '../session/context.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { Sheet } from './sheet.ts';
import { useSize } from './use-size.ts';

interface Props {
  readonly look: number;
  readonly clip?: ClipPosition;
  /** The pixel that each column shows. */
  readonly columns: Uint16Array;
  readonly rows: number;
  readonly priority: number;
  /** The stretch of the look that the canvas shows, as shares of its length. */
  readonly from?: number;
  readonly to?: number;
  /** Told when current figures of the rows have come. */
  readonly onWoven?: (milliamps: Float32Array, wovenRows: number) => void;
}

export function ClothCanvas({ look, clip, columns, rows, priority, from = 0, to = 1, onWoven }: Props) {
  const session = useSession();
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useSize(box);
  const sheet = useMemo(() => new Sheet(columns, rows), [columns, rows]);
  const clipKey = clip === undefined ? '' : `${clip.look}.${clip.track}.${clip.clip}`;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the clip's place is what counts, not the object
  useEffect(() => {
    const peaks = onWoven !== undefined;
    const plan: ClothPlan = { look, rows, peaks, priority, ...(clip !== undefined && { clip }) };
    const { cloth, drop } = session.loft.cloths.want(plan);
    const unlisten = cloth.listen(() => {
      sheet.take(cloth.levels, cloth.wovenRows);
      if (canvas.current !== null) sheet.drawOn(canvas.current, from, to);
      onWoven?.(cloth.milliamps, cloth.wovenRows);
    });
    return () => {
      unlisten();
      drop();
    };
  }, [session, sheet, look, rows, priority, clipKey, from, to, onWoven]);

  useEffect(() => {
    const target = canvas.current;
    if (target === null || size.width === 0) return;
    target.width = size.width * devicePixelRatio;
    target.height = size.height * devicePixelRatio;
    sheet.drawOn(target, from, to);
  }, [sheet, size, from, to]);

  return (
    <div ref={box} className="cloth">
      <canvas ref={canvas} />
    </div>
  );
}
