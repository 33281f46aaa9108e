/** Which pixel each column of a cloth shows, as wired or as placed; and pointing at one of them. */
import { type PointerEvent, useMemo, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import type { PieceView } from '../worker/protocol.ts';
import { orderedByPlace } from './order.ts';
import { isScattered } from './scattered.ts';

export function useColumns(wired: Uint16Array, places: Float32Array): Uint16Array {
  const session = useSession();
  const asPlaced = useStore(session.desk.columnsAsPlaced);
  return useMemo(() => (asPlaced ? orderedByPlace(wired, places) : wired), [asPlaced, wired, places]);
}

/** Whether any zone that plays in the look is wired to and fro. Clips of one zone have columns alike. */
export function useScattered({ clips, places }: PieceView, look: number): boolean {
  return useMemo(() => {
    const zones = new Map(
      clips.filter((clip) => clip.look === look).map(({ columns }) => [columns.join(), columns]),
    );
    return [...zones.values()].some((columns) => isScattered(columns, places));
  }, [clips, places, look]);
}

/** The pixel under the pointer, or under the key that walks along, glows in the picture. */
export function useColumnPointing(columns: Uint16Array) {
  const session = useSession();
  const column = useRef(-1);
  const point = (at: number) => {
    if (columns.length === 0 || at === column.current) return;
    column.current = Math.min(columns.length - 1, Math.max(0, at));
    session.desk.pointed.set([columns[column.current]!]);
  };
  return {
    walk: (by: number) => point(column.current + by),
    pointing: {
      onPointerMove(event: PointerEvent<HTMLElement>) {
        if (event.buttons !== 0) return;
        const { left, width } = event.currentTarget.getBoundingClientRect();
        if (width > 0) point(Math.floor(((event.clientX - left) / width) * columns.length));
      },
      onPointerLeave() {
        column.current = -1;
        session.desk.pointed.set([]);
      },
    },
  };
}
