/** What one clip takes of a frame. */
import type { ScoredClip } from '../../engine/look/score.ts';
import { type ChipName, chips } from '../../engine/parts/chips.ts';
import { clipCycles, cycles } from './estimate.ts';

/** Milliseconds that a chip draws at one frame of the clip, by estimate; null for chips that none is known of. */
export function clipMilliseconds(chip: ChipName, clip: ScoredClip): number | null {
  if (chip !== 'atmega328p') return null;
  return (clipCycles(clip) * cycles.playerShare * 1000) / chips[chip].clockHertz!;
}
