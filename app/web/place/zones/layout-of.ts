/** Pixels and zones of a piece, worked out once for each piece that the history has seen. */
import type { Layout } from '../../../../engine/layout/layout.ts';
import { prepareLayout } from '../../../../engine/layout/prepare.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';

const nothing: Layout = { pixels: [], zones: new Map() };
const known = new WeakMap<Piece, Layout>();

/** @param piece that the engine has taken, so that all of its zones can be had */
export function layoutOf(piece: Piece): Layout {
  let layout = known.get(piece);
  if (layout === undefined) {
    layout = prepareLayout(piece).value ?? nothing;
    known.set(piece, layout);
  }
  return layout;
}

/** Addresses of a zone in the order of its indices. */
export function pixelsOfZone(layout: Layout, zone: string): number[] {
  return layout.zones.get(zone)?.entries.map(({ pixel }) => pixel) ?? [];
}
