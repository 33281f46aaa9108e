/** What the clip takes of its look. */
import { useEffect } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { milliamps } from '../session/words.ts';
import { Ask } from '../shell/Ask.tsx';
import { useClipInHand } from './clip-in-hand.ts';

export function Draws() {
  const session = useSession();
  const { at } = useClipInHand();
  const weight = useStore(session.loft.clip.weight);
  const look = usePart(session.loft.power, ({ looks }) => looks?.[at.look]?.averageMilliamps);
  const frames = usePart(session.loft.sketch, ({ sketch }) => sketch?.estimate?.framesPerSecond);
  useEffect(() => {
    session.loft.clip.want(at);
    return () => session.loft.clip.want(null);
  }, [session, at]);
  return (
    <p className="draws">
      <span>
        Draws <b>{weight === null ? '…' : milliamps(weight.milliamps)}</b>
        {look !== undefined && <> of this look’s {milliamps(look)}</>}
        {weight !== null && weight.milliseconds !== null && (
          <>
            ; takes <b>{weight.milliseconds.toFixed(1)} ms</b>
            {frames !== undefined && <> of a {(1000 / frames).toFixed(1)} ms frame</>}
          </>
        )}
      </span>
      <Ask about="what this clip draws" question="What are these figures made of?">
        The light of this clip alone, on average over one loop at the set brightness. Clips laid over each
        other may hide each other, and the chip and dark pixels draw a little too, so they need not add up to
        the look’s figure. The time is an estimate of what the board needs to draw one frame of it.
      </Ask>
    </p>
  );
}
