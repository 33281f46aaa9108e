/** The runs in hand: what the next move is for. */
import { useMemo } from 'react';
import type { Piece, Run } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import type { Session } from '../session/session.ts';
import { useStore } from '../session/store.ts';
import { runsOf } from './surface/places.ts';

/** Whoever takes other runs begins another step. */
export function takeRuns(session: Session, names: readonly string[]): void {
  session.endDrag();
  session.desk.runsInHand.set(names);
}

/** Takes one more run in hand, or lays it back. */
export function toggleRun(session: Session, name: string): void {
  const before = session.desk.runsInHand.get();
  takeRuns(session, before.includes(name) ? before.filter((other) => other !== name) : [...before, name]);
}

/** In the order of the data line. A run that undo took away is in nobody's hand. */
export function useRunsInHand(piece: Piece): readonly Run[] {
  const names = useStore(useSession().desk.runsInHand);
  return useMemo(() => runsOf(piece).filter(({ name }) => names.includes(name)), [piece, names]);
}

/** The names of those that are still there. */
export function runsInHand(session: Session): readonly string[] {
  const piece = session.bench.get().open?.piece;
  if (piece === undefined) return [];
  const names = session.desk.runsInHand.get();
  return runsOf(piece).flatMap(({ name }) => (names.includes(name) ? [name] : []));
}
