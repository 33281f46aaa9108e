/** What is told anew but is as before stays the very same object, so that nothing is drawn anew for it. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { ClipView, PieceView } from '../worker/protocol.ts';
import type { OpenPiece } from './bench.ts';

export function keptOpen(before: OpenPiece | null, after: OpenPiece): OpenPiece {
  return before !== null && sameFields(before, after) ? before : after;
}

/** They come as copies: the same if they read the same. */
export function keptWarnings(
  before: readonly Diagnostic[],
  after: readonly Diagnostic[],
): readonly Diagnostic[] {
  return JSON.stringify(before) === JSON.stringify(after) ? before : after;
}

/** @param before null where there was none */
export function keptView(before: PieceView | null, after: PieceView): PieceView {
  if (before === null) return after;
  const clips = after.clips.map((clip, i) => keptClip(before.clips[i], clip));
  const view: PieceView = {
    ...after,
    places: same(before.places, after.places) ? before.places : after.places,
    hidden: same(before.hidden, after.hidden) ? before.hidden : after.hidden,
    runs: same(before.runs, after.runs) ? before.runs : after.runs,
    positions: same(before.positions, after.positions) ? before.positions : after.positions,
    order: same(before.order, after.order) ? before.order : after.order,
    clips: same(before.clips, clips) ? before.clips : clips,
  };
  return sameFields(before, view) ? before : view;
}

function sameFields<T extends object>(a: T, b: T): boolean {
  return (Object.keys(b) as (keyof T)[]).every((name) => a[name] === b[name]);
}

function keptClip(before: ClipView | undefined, after: ClipView): ClipView {
  if (before === undefined || !same(before.columns, after.columns)) return after;
  const { look, track, clip, columns } = before;
  const stays = look === after.look && track === after.track && clip === after.clip;
  return stays ? before : { ...after, columns };
}

function same<T>(a: ArrayLike<T>, b: ArrayLike<T>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
