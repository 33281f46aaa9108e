/** The edge of the Compose bench under which the swatch book lies. */
import { lazy, Suspense, useEffect, useId } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';

const SwatchBook = lazy(() => import('./SwatchBook.tsx').then(({ SwatchBook }) => ({ default: SwatchBook })));

export function SwatchDrawer() {
  const session = useSession();
  const open = useStore(session.desk.bookOpen);
  const pages = useId();
  useOpeningByEmptyLook();
  const toggle = () => session.desk.bookOpen.set(!open);
  return (
    <section className="swatch-drawer" aria-label="Swatch book" data-open={open}>
      <button
        type="button"
        className="drawer-edge"
        aria-expanded={open}
        aria-controls={pages}
        onClick={toggle}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={open ? 'M5 8 L10 13 L15 8' : 'M5 12 L10 7 L15 12'} />
        </svg>
        Swatches
      </button>
      <div id={pages}>
        {open && (
          <Suspense>
            <SwatchBook />
          </Suspense>
        )}
      </div>
    </section>
  );
}

/** A look without any clip asks for one: the book opens when it comes into view. */
function useOpeningByEmptyLook(): void {
  const session = useSession();
  const at = usePart(session.playing, (playing) => playing.look);
  const name = usePart(session.bench, (bench) => bench.open?.piece.looks[at]?.name);
  useEffect(() => {
    if (name === undefined) return;
    const look = session.bench.get().open?.piece.looks.find((one) => one.name === name);
    if (look?.tracks.every(({ clips }) => clips.length === 0) === true) session.desk.bookOpen.set(true);
  }, [session, name]);
}
