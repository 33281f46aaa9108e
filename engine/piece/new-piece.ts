/** The first piece from a maker's first answers: dark, but whole, so that everything can be tried on it. */
import type { ChipName } from '../parts/chips.ts';
import type { PixelPartName } from '../parts/pixels.ts';
import { usualPins } from '../parts/usual-pins.ts';
import { newLook } from './blank.ts';
import { controls } from './schema/controls.ts';
import { output, supply } from './schema/power.ts';
import { type Button, type Piece, pieceSchema, type Shape } from './schema.ts';

export interface FirstAnswers {
  readonly name: string;
  readonly board: ChipName;
  readonly part: PixelPartName;
  /** What the supply may give, 1 to 20,000 mA. */
  readonly limitMilliamps: number;
  /** Below this a power bank switches off: at most half of the limit. Without it, 0. */
  readonly keepAliveMilliamps?: number;
  readonly firstRun: { readonly name: string; readonly shape: Shape };
  /** Without it, one. */
  readonly buttons?: 0 | 1 | 2;
}

/**
 * A piece with one run, one look of 8 s with an empty track, and buttons on pins that the board has free.
 * It is as sound as the answers are: `checkPiece` tells of a name, a shape or a limit that no file may hold.
 */
export function newPiece(answers: FirstAnswers): Piece {
  const { name, board, part, limitMilliamps, keepAliveMilliamps = 0, firstRun, buttons = 1 } = answers;
  const pins = usualPins[board];
  const run = { name: firstRun.name, flat: firstRun.shape, removed: [], hidden: [] };
  return {
    version: pieceSchema.shape.version.value,
    name,
    board,
    tickMilliseconds: 20,
    lines: [{ pin: pins.line, part, runs: [run] }],
    zones: [],
    patterns: [],
    looks: [newLook('First light')],
    controls: {
      ...controls.parse({}),
      buttons: firstButtons.slice(0, buttons).map((button, i) => ({ pin: pins.buttons[i]!, ...button })),
    },
    output: output.parse({}),
    supply: { ...supply.parse({}), limitMilliamps, keepAliveMilliamps },
  };
}

const firstButtons: readonly Omit<Button, 'pin'>[] = [
  { name: 'button', press: { do: 'next-look' }, hold: { do: 'blackout' } },
  { name: 'second button', press: { do: 'brightness-step' }, hold: { do: 'pause' } },
];
