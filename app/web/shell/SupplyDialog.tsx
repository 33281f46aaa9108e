/** What the piece runs from: the limit that its light keeps to, and what a power bank must see. */
import { useEffect, useRef } from 'react';
import { cautions } from '../../../engine/safety/cautions.ts';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Amount } from '../start/Amount.tsx';
import { Ask } from './Ask.tsx';
import { Fault } from './Fault.tsx';

const shownCautions = cautions.filter(({ code }) => code === 'lithium-cells' || code === 'short-circuit');

export function SupplyDialog() {
  const session = useSession();
  const dialog = useRef<HTMLDialogElement>(null);
  const supply = usePart(session.bench, ({ open }) => open?.piece.supply);
  const faults = usePart(session.bench, ({ editFaults }) => editFaults);
  useEffect(() => dialog.current?.showModal(), []);
  if (supply === undefined) return null;
  const set = (change: Partial<typeof supply>) => session.edit({ kind: 'set-supply', set: change }, 'drag');
  return (
    <dialog
      ref={dialog}
      className="supply"
      aria-labelledby="supply"
      onClose={() => {
        session.endDrag();
        session.desk.supplyOpen.set(false);
      }}
    >
      <h2 id="supply">What it runs from</h2>
      <div className="amounts">
        <p>
          <Amount
            label="It gives"
            unit="mA"
            value={supply.limitMilliamps}
            min={1}
            max={20_000}
            step={1}
            onChange={(limitMilliamps) => set({ limitMilliamps })}
          />
          <Ask about="the limit" question="What is the limit for?">
            The figure printed on the supply. Light that would draw more is dimmed, on this page and on the
            chip alike, so that nothing gets hot or switches off.
          </Ask>
        </p>
        <p>
          <Amount
            label="at"
            unit="V"
            value={supply.volts}
            min={1}
            max={24}
            step="any"
            onChange={(volts) => set({ volts })}
          />
        </p>
        <p>
          <Amount
            label="and is kept awake by"
            unit="mA"
            value={supply.keepAliveMilliamps}
            min={0}
            max={1000}
            step={1}
            onChange={(keepAliveMilliamps) => set({ keepAliveMilliamps })}
          />
          <Ask about="keeping awake" question="Who needs to be kept awake?">
            Many power banks switch off below about 60 mA. With 80 here the piece never draws less: in the
            dark it goes on glowing a little. For any other supply it is 0.
          </Ask>
        </p>
      </div>
      <Fault fault={faults[0] ?? null} />
      <ul className="watch">
        {shownCautions.map(({ code, short }) => (
          <li key={code}>{short}</li>
        ))}
      </ul>
      <form method="dialog">
        <button type="submit">Done</button>
      </form>
    </dialog>
  );
}
