/** Looks, tracks and clips as they begin, before anything is set on them. */
import type { Clip, Look, Track } from './schema.ts';

/** Long enough to see something happen, short enough to see it again. */
const usualLookMilliseconds = 8000;

export function newTrack(): Track {
  return { clips: [] };
}

/** A look of 8 s with one empty track: it is dark, and a clip can be laid on it. */
export function newLook(name: string): Look {
  return { name, lengthMilliseconds: usualLookMilliseconds, dissolveMilliseconds: 0, tracks: [newTrack()] };
}

/** What must be said of a clip; all else is as the file has it where nothing is written. */
export type ClipEssentials = Pick<Clip, 'pattern' | 'zone' | 'startMilliseconds' | 'lengthMilliseconds'>;

/**
 * A clip that covers what lies below it, without fades, with its pattern's own defaults.
 * @param pattern such as `tide/1`, or the name of a pattern of the piece
 * @param seed 0 to 65535: clips of one pattern with different seeds differ where it plays by chance
 */
export function newClip(essentials: ClipEssentials, seed = 0): Clip {
  return {
    ...essentials,
    endless: false,
    opacity: 255,
    blend: 'normal',
    fadeInMilliseconds: 0,
    fadeOutMilliseconds: 0,
    seed,
    parameters: {},
  };
}
