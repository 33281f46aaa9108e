/** What to watch out for: the usual cautions of the craft, and those that this piece calls for. */
import { useEffect, useId, useState } from 'react';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import { cautionsFor, deference } from '../../../engine/safety/cautions.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { MendButton } from './MendButton.tsx';

type Told = Pick<Diagnostic, 'code' | 'message' | 'advice' | 'path'>;

export function Cautions() {
  const session = useSession();
  const panel = useId();
  const [open, setOpen] = useState(false);
  const { warnings: power } = useStore(session.loft.power);
  const opened = usePart(session.bench, (bench) => bench.open);
  useEffect(() => {
    if (!open) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') setOpen(false);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [open]);
  const own: readonly Told[] = [...power, ...(opened?.warnings ?? [])];
  return (
    <div className="cautions">
      <button
        type="button"
        className="quiet"
        aria-expanded={open}
        aria-controls={panel}
        data-own={own.length > 0}
        onClick={() => setOpen(!open)}
      >
        {own.length === 0 ? 'Cautions' : own.length === 1 ? '1 caution' : `${own.length} cautions`}
      </button>
      {open && (
        // A list too long for the window is scrolled by keyboard as well.
        // biome-ignore lint/a11y/noNoninteractiveTabindex: whatever scrolls must take the focus
        <section id={panel} className="caution-panel" aria-label="Cautions" tabIndex={0}>
          {own.length > 0 && (
            <>
              <h2>This piece</h2>
              <ul>
                {own.map((warning, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: two clips may be told the same
                  <li key={index}>
                    <b>{warning.message}</b> {warning.advice}{' '}
                    <MendButton warning={warning} onLeave={() => setOpen(false)} />
                  </li>
                ))}
              </ul>
            </>
          )}
          <h2>Before anybody wears it</h2>
          <ul>
            {opened !== null &&
              cautionsFor(opened.piece).map(({ code, short, text }) => (
                <li key={code}>
                  <b>{short.split(':')[0]}.</b> {text}
                </li>
              ))}
          </ul>
          <button
            type="button"
            className="quiet small"
            onClick={() => {
              setOpen(false);
              session.desk.supplyOpen.set(true);
            }}
          >
            See to the supply
          </button>
          <p className="whisper">{deference} This page does not look for flashing yet.</p>
        </section>
      )}
    </div>
  );
}
