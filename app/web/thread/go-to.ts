/** Going to a look, also to one that has just been added. */
import type { Session } from '../session/session.ts';

export function goTo(session: Session, look: number): void {
  session.put({ look, blackout: false });
}

/** As soon as the stage has taken the edit that was made last. */
export function goToWhenTaken(session: Session, name: string): void {
  const { revision, opened } = session.bench.get();
  const unsubscribe = session.bench.subscribe(() => {
    const bench = session.bench.get();
    if (bench.revision === revision && bench.editFaults.length === 0) return;
    unsubscribe();
    const look = bench.open?.piece.looks.findIndex((one) => one.name === name) ?? -1;
    if (look >= 0 && bench.opened === opened) goTo(session, look);
  });
}
