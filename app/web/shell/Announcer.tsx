/** Tells what happens to those who cannot see it. */
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';

export function Announcer() {
  const session = useSession();
  const text = useStore(session.announcement);
  return (
    <p className="unseen" role="status" aria-live="polite">
      {text}
    </p>
  );
}
