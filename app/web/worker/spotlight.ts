/** Part of a piece shown by itself: the clips of one track, or the pixels of one zone. */
import { prepareLayout } from '../../../engine/layout/prepare.ts';
import type { Score } from '../../../engine/look/score.ts';
import type { Spotlight } from './protocol.ts';

/** The score with the clips of one track in every look; the whole one for anything else. */
export function spotlitScore(score: Score, spotlight: Spotlight | null): Score {
  if (spotlight === null || !('track' in spotlight)) return score;
  const looks = score.looks.map((look) => ({
    ...look,
    clips: look.clips.filter(({ track }) => track === spotlight.track),
  }));
  return { ...score, looks };
}

/** The pixels that stand in the light; null for all of them, and for a zone that is not there. */
export function spotlitPixels({ piece }: Score, spotlight: Spotlight | null): Uint16Array | null {
  if (spotlight === null || !('zone' in spotlight)) return null;
  const zone = prepareLayout(piece).value?.zones.get(spotlight.zone);
  return zone === undefined ? null : Uint16Array.from(zone.entries, ({ pixel }) => pixel);
}
