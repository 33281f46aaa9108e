/** How fast frames follow each other and how much work a pixel is. */
import type { Recording } from './recording.ts';
import type { RehearsedLook } from './report.ts';

export interface Pace {
  readonly framesPerSecond: number;
  readonly cyclesPerPixel: number;
}

type Frames = Recording['frames'];
type Timed = Pick<Recording, 'frames' | 'hertz'>;

/** Over the whole run. */
export function pace(recording: Timed, pixels: number): Pace {
  return paceWhere(recording, pixels, () => true);
}

/** For each look that was on; 0 frames a second where no two frames of it followed each other. */
export function lookPace(recording: Timed, pixels: number, lookNames: readonly string[]): RehearsedLook[] {
  return lookNames
    .map((name, look) => ({
      name,
      frames: recording.frames.filter(({ moment }) => moment.look === look).length,
      ...paceWhere(recording, pixels, (frame) => frame.moment.look === look),
    }))
    .filter(({ frames }) => frames > 0);
}

function paceWhere(
  { frames, hertz }: Timed,
  pixels: number,
  counts: (frame: Frames[number]) => boolean,
): Pace {
  let intervals = 0;
  let intervalCycles = 0;
  let drawn = 0;
  let drawCycles = 0;
  frames.forEach((frame, i) => {
    if (!counts(frame)) return;
    drawn += 1;
    drawCycles += frame.startCycle - frame.momentCycle;
    const before = frames[i - 1];
    if (before === undefined || !counts(before)) return;
    intervals += 1;
    intervalCycles += frame.startCycle - before.startCycle;
  });
  return {
    framesPerSecond: intervals === 0 ? 0 : (intervals * hertz) / intervalCycles,
    cyclesPerPixel: drawn === 0 ? 0 : drawCycles / drawn / pixels,
  };
}
