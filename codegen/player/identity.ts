/** The head of the file: what it is, where it comes from, and what to mind before it is worn. */
import { chips } from '../../engine/parts/chips.ts';
import { toolVersion } from '../version.ts';
import { pieceHash } from './piece-hash.ts';
import type { Plan } from './plan.ts';
import { commentLines, plain, quoted } from './text.ts';

export interface IdentityFacts {
  /** Figures of the looks, as lines. */
  readonly power: readonly string[];
  readonly cautions: readonly string[];
  readonly estimate: readonly string[];
}

export function printIdentity({ score, chip }: Plan, facts: IdentityFacts): string {
  const { piece } = score;
  const line = piece.lines[0]!;
  const buttons = piece.controls.buttons.map((button) => `${quoted(button.name)} on pin ${button.pin}`);
  const parts = [
    quoted(piece.name),
    '',
    `Made by weftlight ${toolVersion} for ${chips[chip].title} from the piece with the hash ${pieceHash(piece)}.`,
    '',
    `Pixels: ${score.pixels.length} x ${line.part.toUpperCase()} on pin ${line.pin}.`,
    `Buttons: ${buttons.length > 0 ? `${buttons.join(', ')}; each joins its pin to ground` : 'none'}.`,
    `Supply: ${piece.supply.volts} V, limited to ${piece.supply.limitMilliamps} mA.`,
    ...facts.power,
    ...facts.estimate,
    '',
    ...facts.cautions,
  ];
  return `${parts.flatMap((part) => commentLines(plain(part))).join('\n')}\n`;
}
