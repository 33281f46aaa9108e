/** Looks: their number of clips, and where they and the buttons lead. */
import type { Findings } from '../findings.ts';
import { limits } from '../limits.ts';
import { meantInstead } from '../nearest.ts';
import type { Piece } from '../schema.ts';
import { clipped } from '../wording.ts';

export function checkLooks(piece: Piece, findings: Findings): void {
  const clips = piece.looks.flatMap((look) => look.tracks.flatMap((track) => track.clips)).length;
  if (clips > limits.clips) {
    const message = `The looks have ${clips} clips together, but a piece has at most ${limits.clips}.`;
    findings.error('too-many-clips', 'looks', message, 'Remove clips, or split the piece.');
  }
  const names = new Set(piece.looks.map((look) => look.name));
  const lead = (to: string, path: string) => {
    if (names.has(to)) return;
    findings.error('look-unknown', path, `There is no look "${clipped(to)}".`, () => meantInstead(to, names));
  };
  for (const [i, look] of piece.looks.entries()) {
    if (look.moveOn?.to !== undefined) lead(look.moveOn.to, `looks[${i}].moveOn.to`);
  }
  for (const [i, button] of piece.controls.buttons.entries()) {
    for (const gesture of ['press', 'hold', 'double'] as const) {
      const action = button[gesture];
      if (action?.do === 'go-to-look') lead(action.look, `controls.buttons[${i}].${gesture}.look`);
    }
  }
}
