/** The page: the piece and its figures always in view, and one bench at a time. */
import { useEffect, useState } from 'react';
import { ComposeBench } from '../compose/ComposeBench.tsx';
import { Thread } from '../compose/Thread.tsx';
import { FirmwareBench } from '../firmware/FirmwareBench.tsx';
import { PicturePane } from '../picture/PicturePane.tsx';
import { useSession } from '../session/context.ts';
import { savePiece } from '../session/files.ts';
import { Announcer } from './Announcer.tsx';
import type { BenchName } from './benches.ts';
import { DropCloth } from './DropCloth.tsx';
import { Figures } from './Figures.tsx';
import { Header } from './Header.tsx';
import { Refusal } from './Refusal.tsx';

export function Page() {
  const [bench, setBench] = useState<BenchName>('compose');
  useShortcuts();
  return (
    <div className="page">
      <Header bench={bench} onBench={setBench} />
      <Thread />
      <main>
        <PicturePane />
        {bench === 'compose' ? <ComposeBench /> : <FirmwareBench />}
      </main>
      <Figures />
      <Announcer />
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
