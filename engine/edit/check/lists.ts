/** How long the lists of a piece may be. Their items are bounded where they come in, by `edit.ts`. */
import type { Findings } from '../../piece/findings.ts';
import { limits } from '../../piece/limits.ts';
import type { Piece } from '../../piece/schema.ts';

interface List {
  readonly path: string;
  readonly length: number;
  readonly least: number;
  readonly most: number;
  readonly what: string;
}

export function checkLists(piece: Piece, findings: Findings): void {
  for (const { path, length, least, most, what } of listsOf(piece)) {
    if (length < least) {
      findings.error(
        'wrong-length',
        path,
        `This was the last ${what}.`,
        'Keep it, or add another one first.',
      );
    } else if (length > most) {
      const message = `There are ${length} ${what}s here, but at most ${most} are allowed.`;
      findings.error('wrong-length', path, message, 'Remove some first.');
    }
  }
}

function listsOf(piece: Piece): List[] {
  const list = (path: string, items: readonly unknown[], what: string, most: number, least = 0): List => ({
    path,
    length: items.length,
    least,
    most,
    what,
  });
  return [
    ...piece.lines.map(({ runs }, i) => list(`lines[${i}].runs`, runs, 'run', limits.runs, 1)),
    list('zones', piece.zones, 'zone', limits.zones),
    list('patterns', piece.patterns, 'pattern', limits.patterns),
    list('looks', piece.looks, 'look', limits.looks, 1),
    ...piece.looks.flatMap(({ tracks }, i) => [
      list(`looks[${i}].tracks`, tracks, 'track', limits.tracksPerLook),
      ...tracks.map(({ clips }, t) => list(`looks[${i}].tracks[${t}].clips`, clips, 'clip', limits.clips)),
    ]),
    list('controls.buttons', piece.controls.buttons, 'button', limits.buttons),
  ];
}
