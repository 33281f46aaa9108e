/** What to watch out for: the usual cautions of the craft, and those that this piece calls for. */
import { useEffect, useId, useState } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';

interface Caution {
  readonly message: string;
  readonly advice: string;
}

/** Flashes: three a second is the limit of WCAG 2.2, success criterion 2.3.1. The rest is common practice. */
const usual: readonly Caution[] = [
  {
    message: 'Flashing light can bring on seizures.',
    advice: 'Stay below three flashes a second, and warn your audience; this page does not check it yet.',
  },
  {
    message: 'Lithium cells can catch fire.',
    advice: 'Use a protected pack with a fuse; never charge it worn, wet, cold or alone.',
  },
  {
    message: 'A short circuit in a costume burns skin.',
    advice: 'Fuse the supply close to the cell, check the polarity, relieve every joint of strain.',
  },
  {
    message: 'Bright pixels grow warm under fabric, and hot glue lets go of them.',
    advice: 'Keep the brightness low where they touch skin, let them breathe, keep water out.',
  },
  {
    message: 'These figures are estimates.',
    advice:
      'Measure the finished piece; follow your local codes, and ask a licensed person where they apply.',
  },
];

export function Cautions() {
  const session = useSession();
  const panel = useId();
  const [open, setOpen] = useState(false);
  const { warnings: power } = useStore(session.loft.power);
  const warnings = usePart(session.bench, (bench) => bench.open?.warnings) ?? [];
  useEffect(() => {
    if (!open) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') setOpen(false);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [open]);
  const own: readonly Caution[] = [...power, ...warnings];
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
        <div id={panel} className="caution-panel">
          {own.length > 0 && <h2>This piece</h2>}
          <CautionList cautions={own} />
          <h2>Every piece</h2>
          <CautionList cautions={usual} />
        </div>
      )}
    </div>
  );
}

function CautionList({ cautions }: { cautions: readonly Caution[] }) {
  return (
    <ul>
      {cautions.map(({ message, advice }) => (
        <li key={message}>
          <b>{message}</b> {advice}
        </li>
      ))}
    </ul>
  );
}
