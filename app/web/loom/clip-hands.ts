/** What hands do with the clip in hand, by pointer, by key or by a button of the loom. */
import type { Edit } from '../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../engine/edit/kinds/addresses.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { clipAddress, clipAt } from '../session/clip-at.ts';
import type { Session } from '../session/session.ts';
import { duration } from '../session/words.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import type { ClipTask } from './clip-keys.ts';
import { clipAgain, clipPasted, type Laid } from './clip-tasks.ts';

/** The clip in hand, of the look that plays. */
export function clipInHand(
  session: Session,
): { piece: Piece; at: ClipPosition; address: ClipAddress } | null {
  const piece = session.bench.get().open?.piece;
  const at = session.selected.get();
  if (piece === undefined || at === null || clipAt(piece, at) === undefined) return null;
  return { piece, at, address: clipAddress(piece, at) };
}

/** The time of the look that plays, in its loop. */
export function loopMs(session: Session): number {
  const { look } = session.playing.get();
  const length = session.bench.get().open?.piece.looks[look]?.lengthMilliseconds ?? 1;
  return (session.moments.latest?.ms ?? 0) % length;
}

export function takeInHand(session: Session, { look, track, clip }: ClipAddress): void {
  const at = session.bench.get().open?.piece.looks.findIndex(({ name }) => name === look) ?? -1;
  if (at >= 0) session.selected.set({ look: at, track, clip });
}

/** After the page has drawn it: a clip that changed its track is another element. */
export function focusInHand(session: Session): void {
  requestAnimationFrame(() => {
    const at = session.selected.get();
    if (at === null) return;
    document.querySelector<HTMLElement>(`[data-clip="${at.look}.${at.track}.${at.clip}"]`)?.focus();
  });
}

/** `2 s to 6.5 s`, for those who cannot see where a clip has come to lie. */
export function tellInHand(session: Session): void {
  const held = clipInHand(session);
  const clip = held === null ? undefined : clipAt(held.piece, held.at);
  if (clip === undefined) return;
  const { startMilliseconds: start, lengthMilliseconds: length } = clip;
  const fades = [
    clip.fadeInMilliseconds > 0 ? `fades in over ${duration(clip.fadeInMilliseconds)}` : '',
    clip.fadeOutMilliseconds > 0 ? `fades out over ${duration(clip.fadeOutMilliseconds)}` : '',
  ].filter((words) => words !== '');
  const when = `Track ${held!.at.track + 1}, ${duration(start)} to ${duration(start + length)}`;
  session.announcement.set(`${[when, ...fades].join(', ')}.`);
}

const tasks: Record<ClipTask, (session: Session, piece: Piece, at: ClipAddress) => void> = {
  split(session, _, at) {
    taken(session, { kind: 'split-clip', at, atMilliseconds: Math.round(loopMs(session)) }, 'Split in two.');
  },
  again: (session, piece, at) => lay(session, clipAgain(piece, at), 'Laid once more.'),
  copy(session, piece, at) {
    session.desk.copied.set(clipAt(piece, session.selected.get()!) ?? null);
    session.announcement.set(`Copied; paste it in ${at.look} or in another look.`);
  },
  cut(session, piece, at) {
    tasks.copy(session, piece, at);
    tasks.remove(session, piece, at);
  },
  remove(session, piece, at) {
    if (!taken(session, { kind: 'remove-clip', at }, 'Removed.')) return;
    const left = (piece.looks.find(({ name }) => name === at.look)?.tracks[at.track]?.clips.length ?? 1) - 1;
    if (left > 0) takeInHand(session, { ...at, clip: Math.min(at.clip, left - 1) });
    else session.selected.set(null);
    focusInHand(session);
  },
};

export function doWithClip(session: Session, task: ClipTask): void {
  const held = clipInHand(session);
  if (held !== null) tasks[task](session, held.piece, held.address);
}

/** What was copied, at the playhead of the look that plays, on the track in hand. */
export function pasteClip(session: Session): void {
  const copied = session.desk.copied.get();
  const piece = session.bench.get().open?.piece;
  const { look: index } = session.playing.get();
  const look = piece?.looks[index];
  if (copied === null || piece === undefined || look === undefined) return;
  const selected = session.selected.get();
  const track = selected?.look === index ? selected.track : Math.max(0, look.tracks.length - 1);
  lay(session, clipPasted(piece, look.name, track, copied, loopMs(session)), 'Pasted.');
}

function lay(session: Session, laid: Laid | null, words: string): void {
  if (laid === null || !taken(session, laid.edit, words)) return;
  takeInHand(session, laid.at);
  focusInHand(session);
}

/** Whether the edit was accepted; else the page shows why. */
function taken(session: Session, edit: Edit, words: string): boolean {
  session.edit(edit);
  if (session.bench.get().editFaults.length > 0) return false;
  session.announcement.set(words);
  return true;
}
