/** The head of the file: what it is, where it comes from, and what to mind before it is worn. */
import { chips } from '../../engine/parts/chips.ts';
import { deference } from '../../engine/safety/cautions.ts';
import { toolVersion } from '../version.ts';
import { pieceHash } from './piece-hash.ts';
import type { Plan } from './plan.ts';
import { commentLines, plain, quoted } from './text.ts';

export interface LookFigures {
  readonly name: string;
  readonly averageMilliamps: number;
  readonly peakMilliamps: number;
}

export interface IdentityFacts {
  readonly power: readonly LookFigures[];
  /** Sentences for the wearer's and the maker's safety. */
  readonly cautions: readonly string[];
  /** What the sketch takes of the chip, in one sentence; empty on the desk. */
  readonly size: string;
}

export function printIdentity({ score, chip }: Plan, facts: IdentityFacts): string {
  const { piece } = score;
  const line = piece.lines[0]!;
  const buttons = piece.controls.buttons.map((button) => `${quoted(button.name)} on pin ${button.pin}`);
  const comments = [
    ...commentLines(plain(`${quoted(piece.name)}, for ${chips[chip].title}.`)),
    `// Made by weftlight ${toolVersion} from the piece with the hash ${pieceHash(piece)}.`,
    '//',
    ...entry('Pixels', `${score.pixels.length} x ${line.part.toUpperCase()} on pin ${line.pin}`),
    ...entry('Buttons', buttons.length > 0 ? `${buttons.join(', ')}; each joins its pin to ground` : 'none'),
    ...entry('Supply', `${piece.supply.volts} V, limited to ${piece.supply.limitMilliamps} mA`),
    ...(facts.size === '' ? [] : entry('Size', facts.size)),
    ...(facts.power.length === 0
      ? []
      : entry('Power', 'calculated, one loop of each look at the start brightness:')),
    ...facts.power.flatMap((figures) => entry('', powerText(figures))),
    '//',
    '// Before anybody wears it:',
    ...facts.cautions.flatMap((caution) => commentLines(plain(caution), '- ', '  ')),
    ...commentLines(deference),
  ];
  return `${comments.join('\n')}\n`;
}

function entry(label: string, text: string): string[] {
  const width = 9;
  return commentLines(plain(text), label.padEnd(width), ' '.repeat(width));
}

function powerText({ name, averageMilliamps, peakMilliamps }: LookFigures): string {
  return `${Math.round(averageMilliamps)} mA on average, ${Math.ceil(peakMilliamps)} mA at most: ${quoted(name)}`;
}
