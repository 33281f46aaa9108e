/** The piece as worn after dark, with its buttons in reach. Always in view, whatever bench is open. */
import { useEffect, useRef, useState } from 'react';
import { useSize } from '../cloth/use-size.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { percent } from '../session/words.ts';
import { usePictureTarget } from '../swatches/use-picture-target.ts';
import { PieceButton } from './PieceButton.tsx';
import { Scene } from './scene.ts';

export function PicturePane() {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  return (
    <section className="picture" aria-label="The piece, as worn after dark">
      <PictureCanvas />
      {open !== null && (
        <>
          <Veil />
          <div className="picture-foot">
            <div className="playing">
              <Transport />
              <Brightness start={open.piece.output.startBrightness} />
            </div>
            <div className="piece-buttons">
              {open.piece.controls.buttons.map((button, index) => (
                <PieceButton
                  key={button.name}
                  button={button}
                  index={index}
                  holdMilliseconds={open.piece.controls.holdMilliseconds}
                />
              ))}
            </div>
          </div>
        </>
      )}
    </section>
  );
}

function PictureCanvas() {
  const session = useSession();
  const view = usePart(session.bench, (bench) => bench.open?.view);
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
    return session.frames.listen((frame) => scene.light(frame));
  }, [session, scene]);

  return (
    <div className="picture-canvas" data-takes-swatch="picture" ref={box}>
      <canvas ref={canvas} role="img" aria-label="The pixels of the piece in their colours of the moment" />
      {fault && <p className="whisper">This browser cannot draw the picture; everything else works.</p>}
    </div>
  );
}

/** In blackout the picture is rightly dark; it should not look broken. */
function Veil() {
  const session = useSession();
  const { blackout } = useStore(session.playing);
  return blackout ? <p className="veil">blackout</p> : null;
}

function Transport() {
  const session = useSession();
  const { paused } = useStore(session.playing);
  return (
    <button
      type="button"
      className="transport"
      aria-label={paused ? 'Play' : 'Pause'}
      onClick={() => session.put({ paused: !paused })}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {paused ? <path d="M5 3 L17 10 L5 17Z" /> : <path d="M5 3h4v14H5zM11 3h4v14h-4z" />}
      </svg>
    </button>
  );
}

function Brightness({ start }: { start: number }) {
  const session = useSession();
  const { brightness } = useStore(session.playing);
  return (
    <div className="brightness">
      <label htmlFor="brightness">Brightness</label>
      <output htmlFor="brightness">{percent(brightness)}</output>
      <input
        id="brightness"
        type="range"
        min={0}
        max={255}
        value={brightness}
        aria-valuetext={percent(brightness)}
        style={{ '--share': `${(brightness / 255) * 100}%` } as React.CSSProperties}
        onChange={(event) => session.put({ brightness: Number(event.target.value) })}
      />
      {brightness !== start && (
        <button
          type="button"
          className="quiet small"
          title="The piece starts at this brightness from now on"
          onClick={() => session.edit({ kind: 'set-output', set: { startBrightness: brightness } })}
        >
          start here
        </button>
      )}
    </div>
  );
}
