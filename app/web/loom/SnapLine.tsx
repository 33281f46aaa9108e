/** A line across the loom at the time that an edge has come to lie on. */
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { duration } from '../session/words.ts';

export function SnapLine({ lengthMilliseconds }: { lengthMilliseconds: number }) {
  const session = useSession();
  const at = useStore(session.desk.snapped);
  if (at === null) return null;
  return (
    <div className="snap-line" style={{ top: `${(at / lengthMilliseconds) * 100}%` }} aria-hidden="true">
      <span>{duration(at)}</span>
    </div>
  );
}
