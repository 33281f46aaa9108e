/** Playing scripts in tests, on pieces that are all looks and buttons. */
import { parseScript, press, printEvents } from '../../engine/controls/press.ts';
import type { Piece, PieceInput } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';

type Buttons = NonNullable<NonNullable<PieceInput['controls']>['buttons']>;

export const threeLooks: PieceInput['looks'] = ['Dusk', 'Ebb', 'Flood'].map((name) => ({
  name,
  lengthMilliseconds: 1000,
  tracks: [],
}));

export function pieceWithButtons(buttons: Buttons, changes: Partial<PieceInput> = {}): Piece {
  const { controls, ...rest } = changes;
  return pieceWith({ looks: threeLooks, controls: { ...controls, buttons }, ...rest });
}

/** What the script changes, one line an event without the line's end. */
export function played(piece: Piece, script: string, startUptimeMs = 0): string[] {
  const { value, diagnostics } = parseScript(script, piece);
  if (value === undefined) throw new Error(`${script}: ${diagnostics[0]?.message}`);
  return printEvents(press({ piece }, value, startUptimeMs))
    .split('\n')
    .slice(0, -1);
}
