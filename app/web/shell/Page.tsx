/** The page: the piece and its figures always in view, and one bench at a time. */
import { type ComponentType, lazy, Suspense } from 'react';
import { ComposeBench } from '../compose/ComposeBench.tsx';
import { PicturePane } from '../picture/PicturePane.tsx';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { Thread } from '../thread/Thread.tsx';
import { Announcer } from './Announcer.tsx';
import type { BenchName } from './benches.ts';
import { DropCloth } from './DropCloth.tsx';
import { Figures } from './figures/Figures.tsx';
import { Header } from './Header.tsx';
import { Leave } from './Leave.tsx';
import { Refusal } from './Refusal.tsx';
import { useShortcuts } from './use-shortcuts.ts';

/** Compose is what the page opens with; the other benches are fetched when they are asked for. */
const benchViews: Record<BenchName, ComponentType> = {
  place: lazy(() => import('../place/PlaceBench.tsx').then(({ PlaceBench }) => ({ default: PlaceBench }))),
  compose: ComposeBench,
  firmware: lazy(() =>
    import('../firmware/FirmwareBench.tsx').then(({ FirmwareBench }) => ({ default: FirmwareBench })),
  ),
};

/** What lies over the benches for a while, fetched when it is asked for. */
const dialogs = [
  {
    opens: 'starting',
    Dialog: lazy(() =>
      import('../start/StartDialog.tsx').then(({ StartDialog }) => ({ default: StartDialog })),
    ),
  },
  {
    opens: 'supplyOpen',
    Dialog: lazy(() => import('./SupplyDialog.tsx').then(({ SupplyDialog }) => ({ default: SupplyDialog }))),
  },
  {
    opens: 'keysOpen',
    Dialog: lazy(() => import('./KeysDialog.tsx').then(({ KeysDialog }) => ({ default: KeysDialog }))),
  },
] as const;

export function Page() {
  const session = useSession();
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
      {dialogs.map((dialog) => (
        <Lying key={dialog.opens} {...dialog} />
      ))}
      <Leave />
      <Refusal />
      <DropCloth />
    </div>
  );
}

function Lying({ opens, Dialog }: (typeof dialogs)[number]) {
  const session = useSession();
  const open = useStore(session.desk[opens]);
  return open ? (
    <Suspense>
      <Dialog />
    </Suspense>
  ) : null;
}
