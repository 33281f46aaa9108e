/** The colours that a piece has so far, to be picked again. */
import type { ParameterValue, Piece } from '../../../../engine/piece/schema.ts';

/** The most used ones first; of equally used ones, the first in the piece. Each once, as `#rrggbb`. */
export function paletteOf({ looks }: Pick<Piece, 'looks'>, most: number): string[] {
  const uses = new Map<string, number>();
  for (const { tracks } of looks)
    for (const { clips } of tracks)
      for (const { parameters } of clips)
        for (const colour of Object.values(parameters).flatMap(coloursOf)) {
          const name = colour.toLowerCase();
          uses.set(name, (uses.get(name) ?? 0) + 1);
        }
  return [...uses]
    .sort(([, a], [, b]) => b - a)
    .slice(0, most)
    .map(([colour]) => colour);
}

function coloursOf(value: ParameterValue): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.map(({ colour }) => colour);
  if (typeof value !== 'object') return [];
  return value.keys.flatMap((key) => (typeof key.value === 'string' ? [key.value] : []));
}
