/** Somebody plays a generated piece: its buttons, a script of presses, and the uptime at which it begins. */
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import { Chance } from '../support/generate/chance.ts';
import { generateControls, generateScript, scriptOf } from '../support/generate/controls.ts';
import { generatePiece } from '../support/generate-piece.ts';

export interface Playing {
  /** Index of the score in the bundle. */
  readonly piece: number;
  readonly script: string;
  /** The player's uptime when the script begins. */
  readonly start: number;
}

const uptimes = 2 ** 32;

/** A generated piece under buttons of its own. */
export function scoreWithButtons(seed: number): Score {
  const piece = generatePiece(seed);
  const lookNames = piece.looks.map(({ name }) => name);
  const controls = generateControls(new Chance(seed), lookNames);
  const { value, diagnostics } = checkPiece({ ...piece, board: 'host', controls });
  if (value === undefined) throw new Error(`seed ${seed} is refused: ${JSON.stringify(diagnostics)}`);
  return prepareScore(value).value!;
}

/** Every second script or so runs across the wrap of the uptime. */
export function generatePlaying(chance: Chance, score: Score, piece: number): Playing {
  const script = generateScript(chance, score.piece);
  const { endMs } = scriptOf(script, score.piece);
  const start = chance.flip() ? uptimes - chance.whole(1, endMs) : chance.whole(0, uptimes - 1);
  return { piece, script, start };
}

export function wraps({ piece, script, start }: Playing, scores: readonly Score[]): boolean {
  return start + scriptOf(script, scores[piece]!.piece).endMs >= uptimes;
}
