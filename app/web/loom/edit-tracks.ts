/** Edits of tracks as a whole. The clip in hand stays in hand, as tracks are told by their rank alone. */
import type { Edit } from '../../../engine/edit/edit.ts';
import { newTrack } from '../../../engine/piece/blank.ts';
import type { Look } from '../../../engine/piece/schema.ts';
import type { Session } from '../session/session.ts';
import { makingWay } from '../thread/reorder.ts';

/** The new rank of a track after an edit of its look's tracks; null for the one that is removed. */
export function rankAfter(edit: Edit, rank: number): number | null {
  if (edit.kind === 'reorder-track') {
    const { track: from } = edit.at;
    return rank === from ? edit.to : rank + makingWay(rank, from, edit.to);
  }
  if (edit.kind === 'remove-track') {
    if (rank === edit.at.track) return null;
    return rank > edit.at.track ? rank - 1 : rank;
  }
  if (edit.kind === 'add-track' && rank >= edit.at.track) return rank + 1;
  return rank;
}

/** Of a track of the look that plays. */
export function editTracks(session: Session, edit: Edit): void {
  session.edit(edit);
  const selected = session.selected.get();
  if (session.bench.get().editFaults.length > 0) return;
  if (selected !== null) {
    const track = rankAfter(edit, selected.track);
    session.selected.set(track === null ? null : { ...selected, track });
  }
  if (edit.kind === 'reorder-track') session.announcement.set(`Now track ${edit.to + 1}, from the bottom.`);
  if (edit.kind === 'remove-track') session.announcement.set('Track removed.');
}

export function addTrack(session: Session, { name, tracks }: Look): void {
  editTracks(session, {
    kind: 'add-track',
    at: { look: name, track: tracks.length },
    track: newTrack(),
  });
  session.announcement.set(`Track ${tracks.length + 1} lies on top.`);
}
