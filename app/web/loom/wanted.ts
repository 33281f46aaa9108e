/** What somebody means who lets go of a swatch over a track. */
import type { ClipWanted } from '../../../engine/edit/offers/lay-clip.ts';
import type { Look } from '../../../engine/piece/schema.ts';

/** Near the top a whole clip from the start is meant; elsewhere a steady hand means half seconds. */
const startShare = 0.06;
const stepMilliseconds = 500;

/**
 * On the pixels that the track's other clips play on, if these agree; else on all.
 * @param share of the look's length, from its start
 */
export function wantedOnTrack(look: Look, track: number, pattern: string, share: number): ClipWanted {
  const zones = new Set(look.tracks[track]?.clips.map(({ zone }) => zone));
  const [zone = 'all'] = zones.size === 1 ? zones : [];
  const ms = share < startShare ? 0 : share * look.lengthMilliseconds;
  const latest = Math.max(0, look.lengthMilliseconds - stepMilliseconds);
  const atMilliseconds = Math.min(latest, Math.max(0, Math.round(ms / stepMilliseconds) * stepMilliseconds));
  return { look: look.name, pattern, zone, track, atMilliseconds };
}
