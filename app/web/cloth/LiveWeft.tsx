/** The row that is being woven now: the strip of this moment, pixel beside pixel. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { paintRows } from './sheet.ts';

export function LiveWeft({ pixels }: { pixels: number }) {
  const session = useSession();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context == null || pixels === 0) return;
    const image = context.createImageData(pixels, 1);
    const columns = Uint16Array.from({ length: pixels }, (_, pixel) => pixel);
    return session.frames.listen(({ levels }) => {
      // A frame of the piece before may still be on its way.
      if (levels.length !== pixels * 3) return;
      paintRows(image, { levels, rows: 1 }, columns, 0, 1);
      context.putImageData(image, 0, 0);
    });
  }, [session, pixels]);
  return <canvas ref={canvas} className="live-weft" width={Math.max(1, pixels)} height={1} />;
}
