/** Play and pause. */
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';

export function Transport() {
  const session = useSession();
  const { paused } = useStore(session.playing);
  return (
    <button
      type="button"
      className="transport"
      aria-label={paused ? 'Play' : 'Pause'}
      onClick={() => session.put({ paused: !paused })}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {paused ? <path d="M5 3 L17 10 L5 17Z" /> : <path d="M5 3h4v14H5zM11 3h4v14h-4z" />}
      </svg>
    </button>
  );
}
