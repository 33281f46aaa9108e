/** The row that is being woven now: the strip of this moment, pixel beside pixel. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { paintRows } from './sheet.ts';

/** @param columns the pixel that each column shows */
export function LiveWeft({ columns }: { columns: Uint16Array }) {
  const session = useSession();
  const canvas = useRef<HTMLCanvasElement>(null);
  const pixels = columns.length;
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context == null || columns.length === 0) return;
    const image = context.createImageData(columns.length, 1);
    return session.frames.listen(({ levels }) => {
      // A frame of the piece before may still be on its way.
      if (levels.length !== columns.length * 3) return;
      paintRows(image, { levels, rows: 1 }, columns, 0, 1);
      context.putImageData(image, 0, 0);
    });
  }, [session, columns]);
  return <canvas ref={canvas} className="live-weft" width={Math.max(1, pixels)} height={1} />;
}
