/** The lower end of the look, to be pulled or typed: there it begins again. */
import { type PointerEvent, type RefObject, useRef } from 'react';
import { changeLength } from '../../../engine/edit/offers/length.ts';
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { duration } from '../session/words.ts';
import { Entry } from '../tag/Entry.tsx';
import { time } from '../tag/measures.ts';
import { longestLook, pulledLength, shortestLook } from './look-length.ts';

/** Expected times are taken from this far, in CSS pixels. */
const reachPixels = 7;

interface Hand {
  readonly pointerId: number;
  readonly fromY: number;
  readonly look: Look;
  readonly millisecondsPerPixel: number;
}

interface Props {
  readonly look: Look;
  readonly bed: RefObject<HTMLElement | null>;
  /** While it is pulled, the loom keeps its scale: so many times as tall as it was. 1 when the hand rests. */
  readonly onStretch: (times: number) => void;
}

export function LookEnd({ look, bed, onStretch }: Props) {
  const session = useSession();
  const hand = useRef<Hand | null>(null);
  const name = `Set length of look ${look.name}`;
  const setLength = (ms: number) => session.pull(name, (before) => changeLength(before, look.name, ms));
  const tell = () => {
    const { looks = [] } = session.bench.get().open?.piece ?? {};
    const now = looks.find((other) => other.name === look.name);
    if (now !== undefined) session.announcement.set(`${now.name} lasts ${duration(now.lengthMilliseconds)}.`);
  };
  const rest = () => {
    hand.current = null;
    onStretch(1);
    session.endDrag();
    tell();
  };

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    const height = bed.current?.getBoundingClientRect().height ?? 0;
    if (event.button !== 0 || height === 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const millisecondsPerPixel = look.lengthMilliseconds / height;
    hand.current = { pointerId: event.pointerId, fromY: event.clientY, look, millisecondsPerPixel };
  };
  const onPointerMove = (event: PointerEvent) => {
    const held = hand.current;
    if (held === null || held.pointerId !== event.pointerId) return;
    const wanted = held.look.lengthMilliseconds + (event.clientY - held.fromY) * held.millisecondsPerPixel;
    const reach = event.altKey ? 0 : reachPixels * held.millisecondsPerPixel;
    const length = pulledLength(held.look, wanted, reach);
    setLength(length);
    onStretch(length / held.look.lengthMilliseconds);
  };
  const onPointerCancel = () => {
    session.bailDrag();
    rest();
  };

  return (
    <div className="look-end">
      <span
        className="look-end-grip"
        aria-hidden="true"
        title="Pull to make the look longer or shorter"
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={() => hand.current !== null && rest()}
        onPointerCancel={onPointerCancel}
      />
      <span className="look-lasts">
        <span aria-hidden="true">begins again after</span>
        <Entry
          label="Length of the look"
          value={look.lengthMilliseconds}
          min={shortestLook}
          max={longestLook}
          step={1000}
          measure={time}
          whole
          onChange={setLength}
          onRest={() => session.endDrag()}
        />
      </span>
    </div>
  );
}
