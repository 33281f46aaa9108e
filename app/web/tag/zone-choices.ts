/** All zones that a clip can play on, with their sizes. */
import { prepareLayout } from '../../../engine/layout/prepare.ts';
import type { Piece } from '../../../engine/piece/schema.ts';

export interface ZoneChoice {
  readonly name: string;
  /** Twins counted once. */
  readonly count: number;
}

export interface ZoneChoices {
  readonly all: ZoneChoice;
  readonly runs: readonly ZoneChoice[];
  readonly own: readonly ZoneChoice[];
}

const known = new WeakMap<Piece['lines'], { zones: Piece['zones']; choices: ZoneChoices }>();

/** @param piece that the engine has taken, so that all of its zones can be had */
export function zoneChoices(piece: Piece): ZoneChoices {
  const before = known.get(piece.lines);
  if (before?.zones === piece.zones) return before.choices;
  const zones = prepareLayout(piece).value?.zones;
  const choice = ({ name }: { name: string }) => ({ name, count: zones?.get(name)?.count ?? 0 });
  const choices = {
    all: choice({ name: 'all' }),
    // A run without a pixel that can light up is no place to play.
    runs: piece.lines.flatMap(({ runs }) => runs.map(choice)).filter(({ count }) => count > 0),
    own: piece.zones.map(choice),
  };
  known.set(piece.lines, { zones: piece.zones, choices });
  return choices;
}
