/** What the wearer can do: the piece's buttons, while they stay in reach on the picture to be tried. */
import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { freeName } from '../../../engine/edit/offers/free-name.ts';
import { namesOf } from '../../../engine/edit/references.ts';
import { limits } from '../../../engine/piece/limits.ts';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Fault } from '../shell/Fault.tsx';
import { useAttempt } from '../shell/use-attempt.ts';
import { Brightnesses } from './Brightnesses.tsx';
import { ButtonFields } from './ButtonFields.tsx';
import { freePin } from './pins.ts';
import { Timing } from './Timing.tsx';

export function ControlsEditor({ id, onClose }: { id: string; onClose: () => void }) {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const { fault, attempt } = useAttempt();
  const panel = useRef<HTMLElement>(null);
  useEffect(() => panel.current?.focus(), []);
  useRoomAbove(panel);
  if (piece === undefined) return null;
  const { buttons } = piece.controls;
  const pin = freePin(piece);
  const add = () => {
    if (pin === undefined) return;
    const name = freeName(buttons.length === 0 ? 'button' : 'button 2', namesOf(piece, 'button'));
    const action = { do: buttons.length === 0 ? 'next-look' : 'blackout' } as const;
    attempt({ kind: 'add-button', index: buttons.length, button: { name, pin, press: action } });
  };
  return (
    <section
      ref={panel}
      id={id}
      className="controls-editor"
      aria-label="Buttons of the piece"
      // What scrolls takes the focus, so that keys scroll it too.
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onClose();
      }}
    >
      <header>
        <h2>Buttons</h2>
        <p className="whisper">Each lies between its pin and ground. Try them on the picture as you go.</p>
      </header>
      {buttons.map((button) => (
        <ButtonFields key={button.name} piece={piece} button={button} attempt={attempt} />
      ))}
      <Fault fault={fault} />
      <div className="controls-add">
        <button
          type="button"
          className="quiet"
          disabled={pin === undefined || buttons.length >= limits.buttons}
          onClick={add}
        >
          Add a button
        </button>
        {buttons.length === 0 && <p className="whisper">Without one, looks change by their timers alone.</p>}
      </div>
      <Brightnesses piece={piece} attempt={attempt} />
      <Timing piece={piece} attempt={attempt} />
      <button type="button" className="wide" onClick={onClose}>
        Done
      </button>
    </section>
  );
}

/** Between the top of the picture and what can be done with it, in CSS pixels as `--room`. */
function useRoomAbove(panel: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const foot = panel.current?.parentElement;
    const picture = foot?.parentElement;
    if (foot == null || picture == null) return;
    const measure = () => {
      const room = foot.getBoundingClientRect().top - picture.getBoundingClientRect().top;
      panel.current?.style.setProperty('--room', `${Math.max(120, Math.floor(room) - 14)}px`);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(picture);
    observer.observe(foot);
    return () => observer.disconnect();
  }, [panel]);
}
