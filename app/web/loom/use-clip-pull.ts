/**
 * Clips follow the pointer. The first touch of a finger takes a clip in hand, as it may only scroll past;
 * from then on a finger moves it like a mouse does. Listeners stand on the window: a clip that changes its
 * track is drawn by another element.
 */
import { type PointerEvent, type RefObject, useCallback, useEffect, useRef } from 'react';
import { found } from '../../../engine/edit/outcome.ts';
import { titleOf } from '../../../engine/edit/titles.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { clipAddress } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import type { Session } from '../session/session.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { loopMs, takeInHand, tellInHand } from './clip-hands.ts';
import { type Grip, pullClip } from './grip.ts';

/** A hand that moves less than this, in CSS pixels, meant to choose the clip. */
const pullsBeyond = 4;
/** Expected times are taken from this far, in CSS pixels. */
const reachPixels = 7;

interface Hand {
  readonly piece: Piece;
  readonly at: ClipPosition;
  readonly grip: Grip;
  readonly pointerId: number;
  readonly fromX: number;
  readonly fromY: number;
  readonly millisecondsPerPixel: number;
  pulls: boolean;
}

/** @returns what a clip does when a pointer comes down on it */
export function useClipPull(bed: RefObject<HTMLElement | null>) {
  const session = useSession();
  const stop = useRef<(() => void) | null>(null);
  useEffect(() => () => stop.current?.(), []);

  // The same function each time, so that a clip that is not pulled is not drawn again.
  return useCallback(
    (event: PointerEvent, at: ClipPosition, lengthMilliseconds: number) => {
      const { open } = session.bench.get();
      const height = bed.current?.getBoundingClientRect().height ?? 0;
      if (event.button !== 0 || open === null || height === 0) return;
      const isInHand = sameClip(session.selected.get(), at);
      session.selected.set(at);
      if (event.pointerType === 'touch' && !isInHand) return;
      const hand: Hand = {
        piece: open.piece,
        at,
        grip: gripUnder(event.target),
        pointerId: event.pointerId,
        fromX: event.clientX,
        fromY: event.clientY,
        millisecondsPerPixel: lengthMilliseconds / height,
        pulls: false,
      };
      stop.current?.();
      stop.current = follow(session, bed, hand, () => {
        stop.current = null;
      });
    },
    [session, bed],
  );
}

function follow(
  session: Session,
  bed: RefObject<HTMLElement | null>,
  hand: Hand,
  over: () => void,
): () => void {
  const ended = new AbortController();
  const { signal } = ended;
  const end = () => {
    ended.abort();
    session.desk.snapped.set(null);
    if (hand.pulls) session.endDrag();
    over();
  };
  const mine = (event: globalThis.PointerEvent) => event.pointerId === hand.pointerId;
  window.addEventListener(
    'pointermove',
    (event) => {
      if (mine(event)) pull(session, bed, hand, event);
    },
    { signal },
  );
  window.addEventListener(
    'pointerup',
    (event) => {
      if (!mine(event)) return;
      end();
      if (hand.pulls) tellInHand(session);
    },
    { signal },
  );
  window.addEventListener('pointercancel', (event) => mine(event) && end(), { signal });
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Escape' || !hand.pulls) return;
      session.bailDrag();
      session.selected.set(hand.at);
      end();
    },
    { signal },
  );
  return end;
}

function pull(
  session: Session,
  bed: RefObject<HTMLElement | null>,
  hand: Hand,
  event: globalThis.PointerEvent,
): void {
  const [x, y] = [event.clientX - hand.fromX, event.clientY - hand.fromY];
  if (!hand.pulls && Math.hypot(x, y) < pullsBeyond) return;
  hand.pulls = true;
  const address = clipAddress(hand.piece, hand.at);
  const track = hand.grip === 'whole' ? trackUnder(bed.current, event.clientX) : undefined;
  const pulled = pullClip(hand.piece, address, hand.grip, {
    by: y * hand.millisecondsPerPixel,
    reach: event.altKey ? 0 : reachPixels * hand.millisecondsPerPixel,
    playhead: loopMs(session),
    ...(track !== undefined && { track }),
  });
  if (pulled === null) return;
  session.desk.snapped.set(pulled.snapped);
  session.pull(titleOf(pulled.edit, hand.piece), () => found(pulled.edit));
  takeInHand(session, pulled.at);
}

/** The part of a clip that the hand took hold of says so itself. */
function gripUnder(target: EventTarget): Grip {
  const grip = target instanceof Element ? target.closest<HTMLElement>('[data-grip]') : null;
  return (grip?.dataset.grip as Grip | undefined) ?? 'whole';
}

/** The track whose warp is nearest to the pointer. */
function trackUnder(bed: HTMLElement | null, clientX: number): number | undefined {
  const warps = [...(bed?.querySelectorAll<HTMLElement>('.warp[data-track]') ?? [])];
  const away = warps.map((warp) => {
    const { left, right } = warp.getBoundingClientRect();
    return Math.max(left - clientX, clientX - right, 0);
  });
  const nearest = warps[away.indexOf(Math.min(...away))];
  return nearest === undefined ? undefined : Number(nearest.dataset.track);
}

function sameClip(a: ClipPosition | null, b: ClipPosition): boolean {
  return a?.look === b.look && a.track === b.track && a.clip === b.clip;
}
