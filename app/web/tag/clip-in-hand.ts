/**
 * The clip that the tag is tied to, for the rows of the tag. A row reads its own part of the clip and is
 * drawn again only when that part is another one, so a dragged dial moves nothing but itself.
 */
import { createContext, useContext, useMemo, useRef } from 'react';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../engine/edit/kinds/addresses.ts';
import type { Clip, Look, Piece } from '../../../engine/piece/schema.ts';
import { clipAddress, clipAt } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import type { Manner } from '../session/hand.ts';
import type { Session } from '../session/session.ts';
import { Store, usePart } from '../session/store.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { clipTimeAt, type Times, timesOf } from './course/span.ts';

export class ClipInHand {
  /** The row that was touched last: why an edit was refused is told there. */
  readonly touched = new Store('');
  /** The parameter whose way through time lies open. */
  readonly course = new Store<string | null>(null);
  /** The key in hand, by its rank in time. */
  readonly key = new Store(0);

  constructor(
    private readonly session: Session,
    readonly at: ClipPosition,
  ) {}

  /** The piece as it is now, and where the clip stands in it; undefined if it is gone. */
  now(): { piece: Piece; clip: Clip; at: ClipAddress } | undefined {
    const piece = this.session.bench.get().open?.piece;
    const clip = piece && clipAt(piece, this.at);
    return piece === undefined || clip === undefined
      ? undefined
      : { piece, clip, at: clipAddress(piece, this.at) };
  }

  /** @param row by which the reason is told if the edit is refused */
  edit(
    row: string,
    edit: (at: ClipAddress, clip: Clip, piece: Piece) => Edit,
    manner: Manner = 'step',
  ): void {
    const now = this.now();
    if (now === undefined) return;
    this.touched.set(row);
    this.session.edit(edit(now.at, now.clip, now.piece), manner);
  }

  set(row: string, set: Extract<Edit, { kind: 'set-clip' }>['set'], manner: Manner = 'step'): void {
    this.edit(row, (at) => ({ kind: 'set-clip', at, set }), manner);
  }

  /** Where the playhead is in the clip, in whole milliseconds. */
  playheadMs(): number {
    const now = this.now();
    const look = now?.piece.looks[this.at.look];
    if (now === undefined || look === undefined) return 0;
    return Math.floor(clipTimeAt(timesOf(now.clip, look), this.session.moments.latest?.ms ?? 0));
  }

  rest(): void {
    this.session.endDrag();
  }
}

export const ClipContext = createContext<ClipInHand | null>(null);

export function useClipInHand(): ClipInHand {
  const hand = useContext(ClipContext);
  if (hand === null) throw new Error('A row stands outside of the tag.');
  return hand;
}

/** A new hand for each clip: what lies open belongs to it. */
export function useHandOf({ look, track, clip }: ClipPosition): ClipInHand {
  const session = useSession();
  return useMemo(() => new ClipInHand(session, { look, track, clip }), [session, look, track, clip]);
}

/** @param part gives the same value for the same clip, as shared objects of a piece are */
export function useClipPart<P>(part: (clip: Clip) => P): P {
  const session = useSession();
  const { at } = useClipInHand();
  const last = useRef<{ part: P } | null>(null);
  return usePart(session.bench, ({ open }) => {
    const clip = open === null ? undefined : clipAt(open.piece, at);
    // A row may be asked once more when its clip has just gone, before the tag is taken away.
    if (clip !== undefined) last.current = { part: part(clip) };
    return last.current!.part;
  });
}

/** @param part gives the same value for the same look, or one that is equal by itself, such as a number */
export function useLookPart<P>(part: (look: Look) => P): P {
  const session = useSession();
  const { at } = useClipInHand();
  const last = useRef<{ part: P } | null>(null);
  return usePart(session.bench, ({ open }) => {
    const look = open?.piece.looks[at.look];
    if (look !== undefined) last.current = { part: part(look) };
    return last.current!.part;
  });
}

/** When the clip is on; the same object until one of its times is another. */
export function useTimes(): Times {
  const startMilliseconds = useClipPart((clip) => clip.startMilliseconds);
  const lengthMilliseconds = useClipPart((clip) => clip.lengthMilliseconds);
  const endless = useClipPart((clip) => clip.endless);
  const loopMilliseconds = useLookPart((look) => look.lengthMilliseconds);
  return useMemo(
    () => ({ startMilliseconds, lengthMilliseconds, endless, loopMilliseconds }),
    [startMilliseconds, lengthMilliseconds, endless, loopMilliseconds],
  );
}

const none: readonly Diagnostic[] = [];

/** Why the last edit of a row was refused; empty once one is taken, or another row is touched. */
export function useRowFaults(row: string): readonly Diagnostic[] {
  const session = useSession();
  const hand = useClipInHand();
  const isTouched = usePart(hand.touched, (touched) => touched === row);
  return usePart(session.bench, ({ editFaults }) => (isTouched && editFaults.length > 0 ? editFaults : none));
}
