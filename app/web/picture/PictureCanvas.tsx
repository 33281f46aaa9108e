/** The pixels in their colours of the moment, with the marks of what is pointed at above them. */
import { useEffect, useRef, useState } from 'react';
import { useSize } from '../cloth/use-size.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { usePictureTarget } from '../swatches/use-picture-target.ts';
import { PixelMarks } from './PixelMarks.tsx';
import { Scene } from './scene.ts';

export function PictureCanvas() {
  const session = useSession();
  const view = usePart(session.bench, (bench) => bench.open?.view);
  const inLight = useStore(session.inLight);
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [scene, setScene] = useState<Scene | null>(null);
  const [fault, setFault] = useState(false);
  const size = useSize(box);
  usePictureTarget(box);

  useEffect(() => {
    let made: Scene;
    try {
      made = new Scene(canvas.current!);
    } catch {
      setFault(true);
      return;
    }
    setScene(made);
    return () => made.destroy();
  }, []);

  useEffect(() => {
    if (scene === null || view === undefined || size.width === 0) return;
    scene.resize(size.width, size.height);
    scene.show(view);
    if (session.frames.latest !== null) scene.light(session.frames.latest);
  }, [session, scene, view, size]);

  useEffect(() => {
    if (scene === null) return;
    scene.single(inLight);
    return session.frames.listen((frame) => scene.light(frame));
  }, [session, scene, inLight]);

  return (
    <div className="picture-canvas" data-takes-swatch="picture" ref={box}>
      <canvas ref={canvas} role="img" aria-label="The pixels of the piece in their colours of the moment" />
      {view !== undefined && size.width > 0 && <PixelMarks view={view} size={size} />}
      {fault && <p className="whisper">This browser cannot draw the picture; everything else works.</p>}
    </div>
  );
}
