/** The page: the piece and its figures always in view, and one bench at a time. */
import { type ComponentType, lazy, Suspense, useEffect } from 'react';
import { ComposeBench } from '../compose/ComposeBench.tsx';
import { PicturePane } from '../picture/PicturePane.tsx';
import { useSession } from '../session/context.ts';
import { savePiece } from '../session/files.ts';
import { useStore } from '../session/store.ts';
import { Thread } from '../thread/Thread.tsx';
import { Announcer } from './Announcer.tsx';
import type { BenchName } from './benches.ts';
import { DropCloth } from './DropCloth.tsx';
import { Figures } from './Figures.tsx';
import { Header } from './Header.tsx';
import { Leave } from './Leave.tsx';
import { Refusal } from './Refusal.tsx';

/** Compose is what the page opens with; the other benches are fetched when they are asked for. */
const benchViews: Record<BenchName, ComponentType> = {
  place: lazy(() => import('../place/PlaceBench.tsx').then(({ PlaceBench }) => ({ default: PlaceBench }))),
  compose: ComposeBench,
  firmware: lazy(() =>
    import('../firmware/FirmwareBench.tsx').then(({ FirmwareBench }) => ({ default: FirmwareBench })),
  ),
};

const StartDialog = lazy(() =>
  import('../start/StartDialog.tsx').then(({ StartDialog }) => ({ default: StartDialog })),
);

export function Page() {
  const session = useSession();
  const starting = useStore(session.desk.starting);
  const bench = useStore(session.desk.bench);
  const BenchView = benchViews[bench];
  useShortcuts();
  return (
    <div className="page">
      <Header />
      <Thread />
      <main data-bench={bench}>
        <PicturePane />
        <Suspense>
          <BenchView />
        </Suspense>
      </main>
      <Figures />
      <Announcer />
      {starting && (
        <Suspense>
          <StartDialog />
        </Suspense>
      )}
      <Leave />
      <Refusal />
      <DropCloth />
    </div>
  );
}

/** Undo, redo and save as everywhere; a text that is being written keeps its own. */
function useShortcuts() {
  const session = useSession();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 's') {
        event.preventDefault();
        savePiece(session);
        return;
      }
      const writes =
        event.target instanceof Element && event.target.closest('textarea, .monaco-editor') !== null;
      if (writes) return;
      if (key === 'z' && !event.shiftKey) session.undo();
      else if (key === 'y' || key === 'z') session.redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [session]);
}
