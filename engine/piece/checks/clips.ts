/** Clips: in their look, one after the other on a track, with a zone, a pattern and its parameters. */
import type { Findings } from '../findings.ts';
import { meantInstead } from '../nearest.ts';
import type { Clip, Look, ParameterDescription, Piece, Track } from '../schema.ts';
import { clipped } from '../wording.ts';
import { checkParameters } from './parameters.ts';
import { patternsKnownTo } from './patterns.ts';
import { zonesKnownTo } from './zones.ts';

interface Known {
  readonly zones: ReadonlyMap<string, boolean>;
  readonly patterns: ReadonlyMap<string, readonly ParameterDescription[]>;
}

export function checkClips(piece: Piece, findings: Findings): void {
  const known: Known = { zones: zonesKnownTo(piece), patterns: patternsKnownTo(piece) };
  for (const [l, look] of piece.looks.entries()) {
    for (const [t, track] of look.tracks.entries()) {
      const path = `looks[${l}].tracks[${t}]`;
      for (const [c, clip] of track.clips.entries()) {
        const clipPath = `${path}.clips[${c}]`;
        checkReferences(clip, known, clipPath, findings);
        checkTimes(clip, look, clipPath, findings);
      }
      checkOverlaps(track, path, findings);
    }
  }
}

function checkReferences(clip: Clip, known: Known, path: string, findings: Findings): void {
  const hasPixels = known.zones.get(clip.zone);
  if (hasPixels === undefined) {
    const message = `There is no zone "${clipped(clip.zone)}".`;
    findings.error('zone-unknown', `${path}.zone`, message, () =>
      meantInstead(clip.zone, known.zones.keys()),
    );
  } else if (!hasPixels) {
    const message = `The zone "${clipped(clip.zone)}" has no pixels that can light up.`;
    findings.error('zone-empty', `${path}.zone`, message, 'Choose another zone.');
  }
  const parameters = known.patterns.get(clip.pattern);
  if (parameters === undefined) {
    const message = `There is no pattern "${clipped(clip.pattern)}".`;
    findings.error('pattern-unknown', `${path}.pattern`, message, () =>
      meantInstead(clip.pattern, known.patterns.keys()),
    );
  } else {
    checkParameters(clip.parameters, parameters, `${path}.parameters`, findings);
  }
}

function checkTimes(clip: Clip, look: Look, path: string, findings: Findings): void {
  if (clip.endless) {
    if (clip.fadeOutMilliseconds > 0) {
      const message = 'An endless clip has no end, so it never fades out.';
      findings.warning('fade-out-idle', `${path}.fadeOutMilliseconds`, message, 'Remove the fade-out.');
    }
    return;
  }
  const end = clip.startMilliseconds + clip.lengthMilliseconds;
  if (end > look.lengthMilliseconds) {
    const message = `The clip ends at ${end} ms, the look at ${look.lengthMilliseconds} ms.`;
    const advice = 'Shorten the clip or lengthen the look; a clip that goes on over all loops is "endless".';
    findings.error('clip-outside-look', path, message, advice);
  }
  for (const fade of ['fadeInMilliseconds', 'fadeOutMilliseconds'] as const) {
    if (clip[fade] <= clip.lengthMilliseconds) continue;
    const message = `The fade of ${clip[fade]} ms is longer than the clip of ${clip.lengthMilliseconds} ms.`;
    findings.error('fade-too-long', `${path}.${fade}`, message, 'Shorten the fade.');
  }
}

/** In the first loop no two clips of a track meet; an endless one has nothing behind its start. */
function checkOverlaps(track: Track, path: string, findings: Findings): void {
  const inOrder = track.clips
    .map((clip, c) => ({ clip, c }))
    .sort((a, b) => a.clip.startMilliseconds - b.clip.startMilliseconds || a.c - b.c);
  let busyUntil = 0;
  for (const { clip, c } of inOrder) {
    if (clip.startMilliseconds < busyUntil) {
      const message = 'This clip begins before another one on its track has ended.';
      const advice = 'Move it, or put it on a track of its own: tracks blend, clips of one track take turns.';
      findings.error('clips-overlap', `${path}.clips[${c}]`, message, advice);
    }
    const end = clip.endless ? Number.POSITIVE_INFINITY : clip.startMilliseconds + clip.lengthMilliseconds;
    busyUntil = Math.max(busyUntil, end);
  }
}
