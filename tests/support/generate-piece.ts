/** Random valid pieces. A seed stands for one piece, so that a failure can be had again by its number. */

import { pixelCount } from '../../engine/layout/shapes.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { chipNames } from '../../engine/parts/chips.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { PieceInput, Shape } from '../../engine/piece/schema.ts';
import { Chance } from './generate/chance.ts';
import { generateLayout } from './generate/layout.ts';
import { generateLook } from './generate/look.ts';
import { generatePattern } from './generate/pattern.ts';

export { Chance } from './generate/chance.ts';
export { generateMoment } from './generate/moment.ts';

const lookNames = ['Dusk', 'Ebb', 'Flood', 'Slack water'] as const;
const pins = { line: 6, button: 2 } as const;

export function generatePiece(seed: number): PieceInput {
  const chance = new Chance(seed);
  const { line, zones, zoneNames } = generateLayout(chance, pins.line);
  const pixels = line.runs.reduce((sum, { flat }) => sum + pixelCount(flat as Shape), 0);
  const ownPatterns = chance.flip(0.3)
    ? chance.list(chance.whole(1, 2), (index) => generatePattern(chance, `Own ${index + 1}`))
    : [];
  const looks = chance
    .list(chance.whole(1, 4), (index) => generateLook(chance, lookNames[index]!, { zoneNames, ownPatterns }))
    .map((look) => ({
      ...look,
      dissolveMilliseconds: chance.flip() ? 0 : chance.whole(1, 5000),
      ...(chance.flip(0.2) ? { moveOn: { afterMilliseconds: chance.whole(20, 60_000) } } : {}),
    }));
  return {
    version: 2,
    name: `Generated ${seed}`,
    board: chance.pick(chipNames),
    tickMilliseconds: chance.flip(0.4) ? 20 : chance.whole(5, 60),
    lines: [line],
    zones,
    patterns: ownPatterns,
    looks,
    controls: { buttons: [{ name: 'brooch', pin: pins.button, press: { do: 'next-look' } }] },
    output: {
      startBrightness: chance.whole(1, 255),
      curve: chance.pick(['srgb', 'lightness', { power: chance.number(1, 4, 2) }] as const),
      ...(chance.flip(0.4) ? { balance: chance.list(3, () => chance.whole(120, 256)) } : {}),
    },
    supply: generateSupply(chance, pixels),
  };
}

/**
 * Some supplies are small enough to dim many frames, some power banks want to be kept awake; and now and
 * then the dark pixels alone use up all that there is.
 */
function generateSupply(chance: Chance, pixels: number): NonNullable<PieceInput['supply']> {
  const rest = 30 + pixels;
  const whitest = pixels * 60;
  const share = chance.flip(0.5) ? chance.number(0.1, 0.4) : chance.number(0.4, 1.2);
  const wanted = chance.flip(0.03) ? chance.whole(1, rest) : rest + Math.ceil(whitest * share);
  const limitMilliamps = Math.min(20_000, wanted);
  const mostKept = Math.min(1000, Math.floor(limitMilliamps / 2));
  return { limitMilliamps, volts: 5, keepAliveMilliamps: chance.flip(0.25) ? chance.whole(0, mostKept) : 0 };
}

/** The score of a generated piece. Throws if the engine refuses it: then the generator is at fault, or a check is. */
export function generateScore(seed: number): Score {
  const { value: piece, diagnostics } = checkPiece(generatePiece(seed));
  const { value: score, diagnostics: more } = piece === undefined ? { diagnostics: [] } : prepareScore(piece);
  if (score === undefined)
    throw new Error(`seed ${seed} is refused: ${JSON.stringify([...diagnostics, ...more])}`);
  return score;
}
