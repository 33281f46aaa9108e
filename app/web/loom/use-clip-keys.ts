/** Keys on a clip that has the focus: everything a pointer can do with it. */
import { type KeyboardEvent, useCallback } from 'react';
import { clipAddress } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import type { Session } from '../session/session.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { doWithClip, focusInHand, takeInHand, tellInHand } from './clip-hands.ts';
import { type ClipKey, clipKey } from './clip-keys.ts';
import { pullClip } from './grip.ts';

/** @param onColumn told to walk the clip's columns */
export function useClipKeys(at: ClipPosition, onColumn: (by: number) => void) {
  const session = useSession();
  return useCallback(
    (event: KeyboardEvent) => {
      const pressed = clipKey(event);
      if (pressed === null) return;
      event.preventDefault();
      event.stopPropagation();
      session.selected.set(at);
      if (pressed.kind === 'task') doWithClip(session, pressed.task);
      else if (pressed.kind === 'column') onColumn(pressed.by);
      else pullByKey(session, at, pressed);
    },
    [session, at, onColumn],
  );
}

function pullByKey(
  session: Session,
  at: ClipPosition,
  { grip, by, tracks }: ClipKey & { kind: 'pull' },
): void {
  const piece = session.bench.get().open?.piece;
  if (piece === undefined) return;
  const track = at.track + tracks;
  const pulled = pullClip(piece, clipAddress(piece, at), grip, { by, track, reach: 0 });
  if (pulled === null) return;
  session.edit(pulled.edit, 'drag');
  if (session.bench.get().editFaults.length > 0) return;
  takeInHand(session, pulled.at);
  if (tracks !== 0) focusInHand(session);
  tellInHand(session);
}
