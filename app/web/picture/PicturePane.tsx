/** The piece as worn after dark, with its buttons in reach. Always in view, whatever bench is open. */
import { useRef } from 'react';
import { ControlsDoor } from '../controls/ControlsDoor.tsx';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { Brightness } from './Brightness.tsx';
import { NextStep } from './NextStep.tsx';
import { PictureCanvas } from './PictureCanvas.tsx';
import { PieceButton } from './PieceButton.tsx';
import { ShownPart } from './ShownPart.tsx';
import { TimeSlider } from './TimeSlider.tsx';
import { Transport } from './Transport.tsx';
import { useLarge } from './use-large.ts';
import { useNumberKeys } from './use-number-keys.ts';
import { Veil } from './Veil.tsx';

export function PicturePane() {
  const session = useSession();
  const pane = useRef<HTMLElement>(null);
  const piece = usePart(session.bench, ({ open }) => open?.piece);
  const at = usePart(session.playing, ({ look }) => look);
  const large = useStore(session.desk.large);
  useLarge(pane);
  useNumberKeys(piece?.controls.buttons.length ?? 0);
  const look = piece?.looks[at];
  return (
    <section ref={pane} className="picture" data-large={large} aria-label="The piece, as worn after dark">
      {look !== undefined && <NextStep look={look} />}
      <div className="picture-stage">
        <PictureCanvas />
        {piece !== undefined && look !== undefined && (
          <div className="picture-head">
            <ShownPart piece={piece} look={look} />
            <Veil />
            <LargeSwitch />
          </div>
        )}
      </div>
      {piece !== undefined && look !== undefined && (
        <div className="picture-foot">
          <div className="playing">
            <Transport />
            <TimeSlider
              lengthMilliseconds={look.lengthMilliseconds}
              tickMilliseconds={piece.tickMilliseconds}
            />
          </div>
          <Brightness start={piece.output.startBrightness} />
          <ControlsDoor />
          <div className="piece-buttons">
            {piece.controls.buttons.map((button, index) => (
              <PieceButton
                key={button.name}
                button={button}
                index={index}
                holdMilliseconds={piece.controls.holdMilliseconds}
              />
            ))}
          </div>
        </div>
      )}
    </section>
  );
}

function LargeSwitch() {
  const session = useSession();
  const large = useStore(session.desk.large);
  return (
    <button
      type="button"
      className="quiet icon"
      aria-label={large ? 'Back to the bench' : 'Large picture'}
      title={large ? 'Back to the bench (Escape)' : 'Large picture, to hold up against a garment'}
      onClick={() => session.desk.large.set(!large)}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {large ? (
          <path d="M8 3 V8 H3 M12 3 V8 H17 M8 17 V12 H3 M12 17 V12 H17" />
        ) : (
          <path d="M3 8 V3 H8 M12 3 H17 V8 M17 12 V17 H12 M8 17 H3 V12" />
        )}
      </svg>
    </button>
  );
}
