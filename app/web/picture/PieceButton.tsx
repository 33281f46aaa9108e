/** A button of the piece, as the wearer's thumb finds it: mouse, touch and keyboard alike. */
import { type CSSProperties, type KeyboardEvent, type PointerEvent, useEffect, useId, useState } from 'react';
import type { Button } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { gestureWords } from '../session/words.ts';

interface Props {
  readonly button: Button;
  readonly index: number;
  readonly holdMilliseconds: number;
}

const isPressKey = (key: string) => key === ' ' || key === 'Enter';

export function PieceButton({ button, index, holdMilliseconds }: Props) {
  const session = useSession();
  const legend = useId();
  const [down, setDown] = useState(false);
  const press = () => {
    setDown(true);
    session.press(index);
  };
  const release = () => {
    setDown(false);
    session.release(index);
  };

  // A finger that leaves the window must not leave the button pressed.
  useEffect(() => {
    if (!down) return;
    const letGo = () => {
      setDown(false);
      session.release(index);
    };
    window.addEventListener('blur', letGo);
    return () => window.removeEventListener('blur', letGo);
  }, [session, index, down]);

  return (
    <div className="piece-button" style={{ '--hold': `${holdMilliseconds}ms` } as CSSProperties}>
      <button
        type="button"
        data-down={down}
        data-hold={button.hold !== undefined}
        aria-describedby={legend}
        onPointerDown={(event: PointerEvent) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          press();
        }}
        onPointerUp={release}
        onPointerCancel={release}
        onKeyDown={(event: KeyboardEvent) => {
          if (!isPressKey(event.key)) return;
          event.preventDefault();
          if (!event.repeat) press();
        }}
        onKeyUp={(event: KeyboardEvent) => {
          if (isPressKey(event.key)) release();
        }}
        onBlur={() => {
          if (down) release();
        }}
        onClick={(event) => {
          // Assistive technology clicks without touching: a pointer or key has been heard already.
          if (event.detail !== 0) return;
          press();
          release();
        }}
        onContextMenu={(event) => event.preventDefault()}
      >
        <svg viewBox="0 0 80 80" aria-hidden="true">
          <circle className="rim" cx="40" cy="40" r="37" />
          <circle className="held" cx="40" cy="40" r="37" pathLength="100" />
        </svg>
        <span>{button.name}</span>
      </button>
      <kbd title={`Press ${index + 1} on the keyboard`}>{index + 1}</kbd>
      <p className="legend" id={legend}>
        {gestureWords(button).map(({ gesture, effect }) => (
          <span key={gesture}>
            <b>{gesture}</b> {effect}
          </span>
        ))}
      </p>
    </div>
  );
}
