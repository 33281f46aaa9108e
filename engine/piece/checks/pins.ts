/** Pins: each of them exists on the chip and serves one purpose. */
import { chips } from '../../parts/chips.ts';
import type { Findings } from '../findings.ts';
import type { Piece } from '../schema.ts';
import { clipped } from '../wording.ts';

export function checkPins(piece: Piece, findings: Findings): void {
  const uses = [
    ...piece.lines.map(({ pin }, i) => ({ pin, path: `lines[${i}].pin`, use: 'the pixel line' })),
    ...piece.controls.buttons.map(({ pin, name }, i) => ({
      pin,
      path: `controls.buttons[${i}].pin`,
      use: `the button "${clipped(name)}"`,
    })),
  ];
  const { pins, title } = chips[piece.board];
  const taken = new Map<number, string>();
  for (const { pin, path, use } of uses) {
    const before = taken.get(pin);
    const onChip = pins?.find(({ number }) => number === pin);
    if (pins !== null && onChip === undefined) {
      const numbers = pins.map(({ number }) => number);
      const advice = `Choose a pin from ${Math.min(...numbers)} to ${Math.max(...numbers)}.`;
      findings.error('pin-unknown', path, `The ${title} has no pin ${pin} for this.`, advice);
    } else if (before !== undefined) {
      findings.error('pin-twice', path, `Pin ${pin} already serves ${before}.`, 'Choose another pin.');
    } else if (onChip?.caution !== undefined) {
      findings.warning(
        'pin-shared',
        path,
        `Pin ${pin} ${onChip.caution}.`,
        'Choose another pin if one is free.',
      );
    }
    taken.set(pin, before ?? use);
  }
}
