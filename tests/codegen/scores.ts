/** Scores for tests of the sketch: the samples, and small pieces made for one feature each. */
import { readdirSync, readFileSync } from 'node:fs';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';

const samplesFolder = new URL('../../samples/', import.meta.url);

export const sampleFiles: readonly string[] = readdirSync(samplesFolder).filter((name) =>
  name.endsWith('.piece.json'),
);

export function sampleScore(file: string): Score {
  return scoreOfText(readFileSync(new URL(file, samplesFolder), 'utf8'));
}

/** The piece as a file would say it, checked like one. */
export function scoreOf(piece: PieceInput): Score {
  return scoreOfText(JSON.stringify(piece));
}

function scoreOfText(text: string): Score {
  const loaded = loadPiece(text);
  if (loaded.value === undefined) throw new Error(JSON.stringify(loaded.diagnostics));
  const prepared = prepareScore(loaded.value);
  if (prepared.value === undefined) throw new Error(JSON.stringify(prepared.diagnostics));
  return prepared.value;
}

/** A lantern on a punt: eight pixels, one look, one clip; changed as a test needs it. */
export function puntLantern(changes: Partial<PieceInput> = {}): PieceInput {
  return {
    version: 2,
    name: 'Punt lantern',
    board: 'atmega328p',
    lines: [
      {
        pin: 6,
        part: 'ws2812b',
        runs: [{ name: 'pole', flat: { kind: 'straight', count: 8, start: [0, 0], pitchMillimetres: 20 } }],
      },
    ],
    looks: [lookOf('Glow', [{}])],
    ...changes,
  };
}

type LookInput = PieceInput['looks'][number];
type ClipInput = LookInput['tracks'][number]['clips'][number];

/** A look of two seconds, each clip on a track of its own; a still colour unless a clip says otherwise. */
export function lookOf(
  name: string,
  clips: readonly Partial<ClipInput>[],
  more: Partial<LookInput> = {},
): LookInput {
  return {
    name,
    lengthMilliseconds: 2000,
    tracks: clips.map((clip) => ({ clips: [{ pattern: 'still/1', lengthMilliseconds: 2000, ...clip }] })),
    ...more,
  };
}
