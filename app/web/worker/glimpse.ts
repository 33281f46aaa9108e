/** One frame of a piece that is not on stage, so that it can be chosen by sight. */
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import { prepareScore } from '../../../engine/look/prepare.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { PieceView } from './protocol.ts';
import { viewOf } from './view.ts';

export interface Glimpse extends Pick<PieceView, 'places' | 'hidden' | 'order'> {
  readonly drive: Uint8Array;
}

/** Far enough into the look for every track to have begun. */
const shareOfLook = 0.4;

/** @param text of a piece file; null if it cannot be played */
export function glimpse(text: string): Glimpse | null {
  const piece = loadPiece(text).value;
  const score = piece && prepareScore(piece).value;
  if (score === undefined) return null;
  const ms = Math.floor(score.looks[0]!.lengthMilliseconds * shareOfLook);
  const { drive } = borrowFrame(score, stillMoment(0, ms, score.piece.output.startBrightness));
  const { places, hidden, order } = viewOf(score);
  return { places, hidden, order, drive: drive.slice() };
}
