/** The way to what the piece's buttons do. */
import { lazy, Suspense, useId, useRef, useState } from 'react';

const fetchEditor = () => import('./ControlsEditor.tsx');
const ControlsEditor = lazy(() => fetchEditor().then(({ ControlsEditor }) => ({ default: ControlsEditor })));

export function ControlsDoor() {
  const [open, setOpen] = useState(false);
  const door = useRef<HTMLButtonElement>(null);
  const panel = useId();
  return (
    <>
      <button
        ref={door}
        type="button"
        className="quiet small controls-door"
        aria-expanded={open}
        aria-controls={panel}
        onPointerEnter={() => void fetchEditor()}
        onClick={() => setOpen(!open)}
      >
        {open ? 'Done' : 'Change buttons'}
      </button>
      {open && (
        <Suspense>
          <ControlsEditor
            id={panel}
            onClose={() => {
              setOpen(false);
              door.current?.focus();
            }}
          />
        </Suspense>
      )}
    </>
  );
}
