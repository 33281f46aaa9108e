/** Where a swatch is laid that is used without being carried. */
import { useCallback } from 'react';
import { useSession } from '../session/context.ts';
import type { Spot } from './laying.ts';

/** While the piece plays, nobody means the moment it happens to be at: then it is the look's start. */
export function useSpot(): () => Spot {
  const session = useSession();
  return useCallback(() => {
    const { look, paused } = session.playing.get();
    const length = session.bench.get().open?.piece.looks[look]?.lengthMilliseconds ?? 1;
    const ms = paused ? Math.floor((session.moments.latest?.ms ?? 0) % length) : 0;
    return { look, ms, selected: session.selected.get() };
  }, [session]);
}
