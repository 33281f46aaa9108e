/** Why the picture is darker than one might think: it should not look broken. */
import { useEffect, useState } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { milliamps } from '../session/words.ts';
import { Ask } from '../shell/Ask.tsx';

export function Veil() {
  const session = useSession();
  const { blackout } = useStore(session.playing);
  const limit = usePart(session.bench, ({ open }) => open?.piece.supply.limitMilliamps ?? 0);
  const limited = useLimited();
  if (blackout) return <p className="veil">blackout</p>;
  if (!limited) return null;
  return (
    <p className="veil" data-limited="true">
      dimmed to {milliamps(limit)}
      <Ask about="dimming" question="Why is it dimmed?">
        This would draw more than the limit of the supply, so every pixel is dimmed alike, here and on the
        chip. Lower the brightness, or press the limit below if your supply gives more.
      </Ask>
    </p>
  );
}

/** A word that comes and goes with single frames cannot be read. */
const shownForMs = 1500;

function useLimited(): boolean {
  const session = useSession();
  const [limited, setLimited] = useState(false);
  useEffect(() => {
    let timer = 0;
    const end = () => {
      timer = 0;
      setLimited(false);
    };
    const unlisten = session.frames.listen((frame) => {
      if (!frame.limited) return;
      if (timer === 0) setLimited(true);
      window.clearTimeout(timer);
      timer = window.setTimeout(end, shownForMs);
    });
    return () => {
      unlisten();
      window.clearTimeout(timer);
    };
  }, [session]);
  return limited;
}
