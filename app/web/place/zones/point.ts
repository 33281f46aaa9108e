/** While the pointer or the focus is on something, its pixels are marked wherever they are drawn. */
import { useEffect } from 'react';
import { useSession } from '../../session/context.ts';
import type { Session } from '../../session/session.ts';

export interface PointHandlers {
  onPointerEnter(): void;
  onPointerLeave(): void;
  onFocus(): void;
  onBlur(): void;
}

export function pointing(session: Session, pixels: () => readonly number[]): PointHandlers {
  const point = () => session.desk.pointed.set(pixels());
  const rest = () => session.desk.pointed.set([]);
  return { onPointerEnter: point, onPointerLeave: rest, onFocus: point, onBlur: rest };
}

/** What goes away while it is pointed at does not leave its mark behind. */
export function useNothingPointedBehind(): void {
  const session = useSession();
  useEffect(() => () => session.desk.pointed.set([]), [session]);
}
