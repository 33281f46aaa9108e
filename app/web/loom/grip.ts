/** What pulling at a clip comes to: as a whole, at one of its edges, or at one of its fades. */
import type { Edit } from '../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../engine/edit/kinds/addresses.ts';
import { fitClip } from '../../../engine/edit/snap/fit-clip.ts';
import { fitEdge } from '../../../engine/edit/snap/fit-edge.ts';
import { clamp } from '../../../engine/edit/snap/free-room.ts';
import { edgesOf, snapClip, snapTime } from '../../../engine/edit/snap/snap-time.ts';
import type { Clip, Look, Piece } from '../../../engine/piece/schema.ts';

export type Grip = 'whole' | 'start' | 'end' | 'fade-in' | 'fade-out';

export interface Pull {
  /** How far the hand has come, in milliseconds of the look; below 0 towards its start. */
  readonly by: number;
  /** The track that the hand is over, for a whole clip. */
  readonly track?: number;
  /** Milliseconds within which a time that the eye expects is taken; 0 for none. */
  readonly reach: number;
  /** The moment that plays, which edges take gladly too. */
  readonly playhead?: number;
}

export interface Pulled {
  /** Of the piece as it was when the hand began. */
  readonly edit: Edit;
  /** Where the clip lies after it. */
  readonly at: ClipAddress;
  /** The expected time that it came to lie on. */
  readonly snapped: number | null;
}

const roundMilliseconds = 50;

/** Null where there is no such clip, or no room for it on that track. */
export function pullClip(piece: Piece, at: ClipAddress, grip: Grip, pull: Pull): Pulled | null {
  const look = piece.looks.find(({ name }) => name === at.look);
  const clip = look?.tracks[at.track]?.clips[at.clip];
  if (look === undefined || clip === undefined) return null;
  const expects = pull.reach > 0;
  const targets = expects ? expectedTimes(look, at, pull.playhead) : [];
  // Where nothing else is expected, round figures are.
  const step = expects ? roundMilliseconds : 1;
  const by = Math.round(pull.by / step) * step;
  const held = hands[grip]({ look, clip, at, pull: { ...pull, by }, targets });
  if (held === null) return null;
  return { ...held, snapped: held.edges.find((edge) => targets.includes(edge)) ?? null };
}

interface Hand {
  readonly look: Look;
  readonly clip: Clip;
  readonly at: ClipAddress;
  readonly pull: Pull;
  readonly targets: readonly number[];
}

/** @returns the times of the look that may have come to lie on an expected one, too */
type Held = Omit<Pulled, 'snapped'> & { readonly edges: readonly number[] };

const hands: Record<Grip, (hand: Hand) => Held | null> = {
  whole({ look, clip, at, pull, targets }) {
    const { startMilliseconds, lengthMilliseconds } = clip;
    const track = pull.track ?? at.track;
    const stays = track === at.track;
    const wanted = snapClip(startMilliseconds + pull.by, lengthMilliseconds, targets, pull.reach);
    const start = fitClip(look, track, { ...clip, startMilliseconds: wanted }, stays ? at.clip : undefined);
    if (start === undefined) return null;
    const to = { ...at, track, clip: stays ? at.clip : look.tracks[track]!.clips.length };
    return {
      edit: { kind: 'move-clip', at, to, startMilliseconds: start },
      at: to,
      edges: [start, start + lengthMilliseconds],
    };
  },

  start: (hand) => trimmed(hand, 'start', hand.clip.startMilliseconds),

  end: (hand) => trimmed(hand, 'end', hand.clip.startMilliseconds + hand.clip.lengthMilliseconds),

  'fade-in'({ clip, at, pull, targets }) {
    const { startMilliseconds: start, lengthMilliseconds: length } = clip;
    const ends = snapTime(start + clip.fadeInMilliseconds + pull.by, targets, pull.reach);
    const fadeInMilliseconds = clamp(ends - start, 0, length);
    return { edit: { kind: 'set-clip', at, set: { fadeInMilliseconds } }, at, edges: [ends] };
  },

  'fade-out'({ clip, at, pull, targets }) {
    if (clip.endless) return null;
    const end = clip.startMilliseconds + clip.lengthMilliseconds;
    const begins = snapTime(end - clip.fadeOutMilliseconds + pull.by, targets, pull.reach);
    const fadeOutMilliseconds = clamp(end - begins, 0, clip.lengthMilliseconds);
    return { edit: { kind: 'set-clip', at, set: { fadeOutMilliseconds } }, at, edges: [begins] };
  },
};

function trimmed({ look, at, pull, targets }: Hand, edge: 'start' | 'end', from: number): Held | null {
  const extent = fitEdge(look, at, edge, snapTime(from + pull.by, targets, pull.reach));
  if (extent === undefined) return null;
  const { startMilliseconds, lengthMilliseconds } = extent;
  const moved = edge === 'start' ? startMilliseconds : startMilliseconds + lengthMilliseconds;
  return { edit: { kind: 'trim-clip', at, ...extent }, at, edges: [moved] };
}

/** Beyond this, whole seconds lie so close that they would hold every edge. */
const mostSeconds = 120;

function expectedTimes(look: Look, at: ClipAddress, playhead: number | undefined): number[] {
  const seconds = Math.floor(look.lengthMilliseconds / 1000);
  const whole = seconds > mostSeconds ? [] : Array.from({ length: seconds + 1 }, (_, i) => i * 1000);
  return [...edgesOf(look, at), ...whole, ...(playhead === undefined ? [] : [Math.round(playhead)])];
}
