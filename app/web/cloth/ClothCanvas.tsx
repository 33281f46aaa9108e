/** A cloth on a canvas: woven by the loft, painted row by row as it comes. */
import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { Cloth, ClothListener } from '../session/cloth.ts';
import { useSession } from '../session/context.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { Sheet, type Stretch } from './sheet.ts';
import { useSize } from './use-size.ts';

interface Props extends Stretch {
  readonly look: number;
  readonly clip?: ClipPosition;
  /** The pixel that each column shows. */
  readonly columns: Uint16Array;
  readonly rows: number;
  /** Smaller comes first; 0 is what the hand holds. */
  readonly priority: number;
  /** Told when figures of the current have come. */
  readonly onCurrents?: ClothListener['onCurrents'];
  /** Lends the cloth to those who want to read its colours. */
  readonly onCloth?: (cloth: Cloth) => void;
}

export function ClothCanvas({
  look,
  clip,
  columns,
  rows,
  fromMs,
  toMs,
  priority,
  onCurrents,
  onCloth,
}: Props) {
  const session = useSession();
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const woven = useRef<Cloth>(null);
  /** The sheet before lies under the new one until that is whole. */
  const under = useRef<Sheet>(null);
  const size = useSize(box);
  const sheet = useMemo(() => new Sheet(columns, rows, { fromMs, toMs }), [columns, rows, fromMs, toMs]);
  const track = clip?.track;
  const index = clip?.clip;

  const paint = useCallback(() => {
    const context = canvas.current?.getContext('2d');
    if (context == null) return;
    context.clearRect(0, 0, context.canvas.width, context.canvas.height);
    under.current?.drawOn(context, { fromMs, toMs });
    sheet.drawOn(context, { fromMs, toMs });
    sheet.drawGaps(context);
  }, [sheet, fromMs, toMs]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: its priority alone is no reason to weave it again
  useEffect(() => {
    const position = track === undefined || index === undefined ? {} : { clip: { look, track, clip: index } };
    const plan = { look, ...position, fromMs, toMs, rows, currents: onCurrents !== undefined };
    const { cloth, drop } = session.loft.cloths.want(plan, priority);
    const { levels, knownRows } = cloth;
    sheet.take(levels, 0, knownRows);
    woven.current = cloth;
    onCloth?.(cloth);
    paint();
    const unlisten = cloth.listen({
      onRows(fromRow, toRow) {
        sheet.take(cloth.levels, fromRow, toRow);
        if (cloth.knownRows === rows) under.current = null;
        paint();
      },
      ...(onCurrents !== undefined && { onCurrents }),
    });
    return () => {
      under.current = sheet;
      unlisten();
      drop();
    };
  }, [session, sheet, paint, look, track, index, rows, fromMs, toMs, onCurrents, onCloth]);

  useEffect(() => {
    if (woven.current !== null) woven.current.priority = priority;
  }, [priority]);

  useEffect(() => {
    const target = canvas.current;
    if (target === null || size.width === 0) return;
    target.width = size.width * devicePixelRatio;
    target.height = size.height * devicePixelRatio;
    paint();
  }, [size, paint]);

  return (
    <div ref={box} className="cloth">
      <canvas ref={canvas} />
    </div>
  );
}
