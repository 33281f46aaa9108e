/** From a piece to a score: every name resolved, every pattern compiled, every table built. */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import { hasErrors, pathText } from '../diagnostic.ts';
import type { Layout, Zone } from '../layout/layout.ts';
import { prepareLayout } from '../layout/prepare.ts';
import { buildOutputStage } from '../light/output.ts';
import { checkOwnPatterns, compileClip } from '../pattern/clip.ts';
import type { Clip, Look, Piece } from '../piece/schema.ts';
import { buildCurrentModel } from '../power/current.ts';
import type { Score, ScoredClip, ScoredLook } from './score.ts';

/**
 * The score of a piece that `loadPiece` has passed. All diagnostics of layout and patterns come together;
 * a score exists only without errors.
 */
export function prepareScore(piece: Piece): Checked<Score> {
  const { value: layout, diagnostics: layoutFindings } = prepareLayout(piece);
  if (layout === undefined) return { diagnostics: layoutFindings };

  const diagnostics: Diagnostic[] = [...layoutFindings, ...checkOwnPatterns(piece)];
  const looks = piece.looks.map((look, index) => scoreLook({ piece, layout, look, index, diagnostics }));
  if (hasErrors(diagnostics)) return { diagnostics };

  const current = buildCurrentModel(piece, layout.pixels.length);
  const score: Score = {
    piece,
    pixels: layout.pixels,
    zones: playedZones(looks),
    looks,
    output: buildOutputStage(piece, current),
    current,
    warnings: diagnostics,
  };
  return { value: score, diagnostics };
}

interface LookWork {
  readonly piece: Piece;
  readonly layout: Layout;
  readonly look: Look;
  readonly index: number;
  /** Added to. */
  readonly diagnostics: Diagnostic[];
}

function scoreLook(work: LookWork): ScoredLook {
  const { look, index } = work;
  const clips: ScoredClip[] = [];
  for (const [track, { clips: onTrack }] of look.tracks.entries()) {
    for (const [at, clip] of onTrack.entries()) {
      const scored = scoreClip(
        work,
        clip,
        { track, clip: at },
        pathText(['looks', index, 'tracks', track, 'clips', at]),
      );
      if (scored !== null) clips.push(scored);
    }
  }
  const { name, lengthMilliseconds, dissolveMilliseconds } = look;
  return { name, lengthMilliseconds, dissolveMilliseconds, clips };
}

function scoreClip(
  { piece, layout, diagnostics }: LookWork,
  clip: Clip,
  position: { track: number; clip: number },
  path: string,
): ScoredClip | null {
  // A checked piece names only zones that exist.
  const zone = layout.zones.get(clip.zone)!;
  const compiled = compileClip({ piece, clip, zone, path });
  diagnostics.push(...compiled.diagnostics);
  if (compiled.value === undefined) return null;
  return {
    ...position,
    pattern: clip.pattern,
    zone,
    startMilliseconds: clip.startMilliseconds,
    lengthMilliseconds: clip.lengthMilliseconds,
    endless: clip.endless,
    opacity: clip.opacity,
    blend: clip.blend,
    fadeInMilliseconds: clip.fadeInMilliseconds,
    fadeOutMilliseconds: clip.fadeOutMilliseconds,
    program: compiled.value,
  };
}

function playedZones(looks: readonly ScoredLook[]): Zone[] {
  return [...new Set(looks.flatMap((look) => look.clips.map((clip) => clip.zone)))];
}
