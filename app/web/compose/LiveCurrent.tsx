/** A bead on the current curve, where the piece is now. */
import { type RefObject, useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import type { CurveHandle } from './CurrentCurve.tsx';

interface Props {
  readonly curve: RefObject<CurveHandle | null>;
  readonly lengthMilliseconds: number;
}

export function LiveCurrent({ curve, lengthMilliseconds }: Props) {
  const session = useSession();
  const bead = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const unlisten = [
      session.frames.listen(({ milliamps }) => {
        const share = curve.current?.shareOf(milliamps) ?? 0;
        bead.current?.style.setProperty('left', `${share * 100}%`);
      }),
      session.moments.listen(({ ms }) => {
        const share = (ms % lengthMilliseconds) / lengthMilliseconds;
        bead.current?.style.setProperty('top', `${share * 100}%`);
      }),
    ];
    return () => {
      for (const stop of unlisten) stop();
    };
  }, [session, curve, lengthMilliseconds]);
  return <div ref={bead} className="current-bead" />;
}
