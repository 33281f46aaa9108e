/** Hanging a blank look at the end of the thread, and going to it. */
import type { Edit } from '../../../engine/edit/edit.ts';
import { blankLook } from '../../../engine/edit/offers/blank-look.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { Session } from '../session/session.ts';
import { goToWhenTaken } from './go-to.ts';

/**
 * @param attempt hands the edit over; false if it was refused
 * @returns the name of the new look; null if it was refused
 */
export function addLook(session: Session, piece: Piece, attempt: (edit: Edit) => boolean): string | null {
  const edit = blankLook(piece, `Look ${piece.looks.length + 1}`);
  if (!attempt(edit)) return null;
  const { name } = edit.look;
  goToWhenTaken(session, name);
  session.announcement.set(`${name} hangs at the end of the thread, dark as yet.`);
  return name;
}
