/** Random moments of a score: within loops, at the edges of clips, after days, while dissolving, in the dark. */
import type { Moment } from '../../../engine/look/moment.ts';
import type { Score } from '../../../engine/look/score.ts';
import type { Chance } from './chance.ts';

const darkest = 0;
const brightest = 255;

export function generateMoment(chance: Chance, score: Score): Moment {
  const look = chance.whole(0, score.looks.length - 1);
  const ms = generateMilliseconds(chance, score, look);
  return {
    look,
    ms,
    brightness: generateBrightness(chance, score),
    blackout: chance.flip(0.01),
    paused: false,
    uptimeMs: 0,
    leaving: chance.flip(0.3) ? generateLeaving(chance, score, look) : null,
  };
}

function generateMilliseconds(chance: Chance, score: Score, look: number): number {
  const { lengthMilliseconds, clips } = score.looks[look]!;
  if (chance.flip(0.08)) return chance.whole(0, 0xffffffff);
  const loop = chance.flip(0.25) ? chance.whole(1, 40) * lengthMilliseconds : 0;
  if (clips.length > 0 && chance.flip(0.15)) {
    const clip = chance.pick(clips);
    const edge = clip.startMilliseconds + chance.pick([0, clip.lengthMilliseconds]);
    const near = edge + chance.whole(-2, 2) * score.piece.tickMilliseconds + chance.whole(-1, 1);
    return Math.max(0, loop + near);
  }
  return loop + chance.whole(0, lengthMilliseconds - 1);
}

function generateBrightness(chance: Chance, score: Score): number {
  if (chance.flip(0.02)) return darkest;
  if (chance.flip(0.5)) return brightest;
  return chance.flip(0.3) ? score.piece.output.startBrightness : chance.whole(8, brightest);
}

/** Only a look with a dissolve has one leaving; mix is as the player would have it, or any other. */
function generateLeaving(chance: Chance, score: Score, look: number): Moment['leaving'] {
  if (score.looks[look]!.dissolveMilliseconds === 0) return null;
  const leaving = chance.whole(0, score.looks.length - 1);
  return { look: leaving, ms: generateMilliseconds(chance, score, leaving), mix: chance.whole(0, 254) };
}
