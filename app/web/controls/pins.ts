/** Pins of the piece's board: which of them a button may have, and what the others serve. */
import { chips } from '../../../engine/parts/chips.ts';
import type { Piece } from '../../../engine/piece/schema.ts';

export interface PinChoice {
  readonly number: number;
  /** As a maker reads it: `A3`, or `6, the data line`. */
  readonly words: string;
  /** It serves something else already. */
  readonly taken: boolean;
}

/**
 * All pins of the board in their order, or null where they are not listed.
 * @param button whose own pin counts as free
 */
export function pinChoices(piece: Piece, button: string): PinChoice[] | null {
  const { pins } = chips[piece.board];
  if (pins === null) return null;
  const uses = usesOf(piece, button);
  return pins.map(({ number, label, caution }) => {
    const use = uses.get(number);
    const remark = use ?? (caution === undefined ? undefined : 'better another one');
    return { number, words: remark === undefined ? label : `${label}, ${remark}`, taken: use !== undefined };
  });
}

/** Why a maker may want another pin first, as the chip's table has it. */
export function pinCaution({ board }: Pick<Piece, 'board'>, pin: number): string | null {
  const caution = chips[board].pins?.find(({ number }) => number === pin)?.caution;
  return caution === undefined ? null : `Pin ${pin} ${caution}.`;
}

/** The first pin that nothing uses and nothing speaks against; then any free one. Undefined where all are taken. */
export function freePin(piece: Piece): number | undefined {
  const uses = usesOf(piece);
  const { pins } = chips[piece.board];
  const candidates = pins ?? Array.from({ length: 65 }, (_, number) => ({ number, caution: undefined }));
  const free = candidates.filter(({ number }) => !uses.has(number));
  return (free.find(({ caution }) => caution === undefined) ?? free[0])?.number;
}

function usesOf({ lines, controls }: Piece, except?: string): Map<number, string> {
  return new Map([
    ...controls.buttons
      .filter(({ name }) => name !== except)
      .map(({ pin, name }): [number, string] => [pin, name]),
    ...lines.map(({ pin }): [number, string] => [pin, 'the data line']),
  ]);
}
