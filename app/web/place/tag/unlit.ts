/** Whether any look lights a run. */
import type { Piece, ZoneSource } from '../../../../engine/piece/schema.ts';

/** True as long as no clip plays on the run, on all, or on a zone that takes pixels of it. */
export function isUnlit(piece: Piece, run: string): boolean {
  const lights = (zone: string): boolean => {
    if (zone === 'all' || zone === run) return true;
    const source = piece.zones.find(({ name }) => name === zone)?.source;
    return source !== undefined && takesFrom(source, run);
  };
  return !piece.looks.some(({ tracks }) =>
    tracks.some(({ clips }) => clips.some(({ zone }) => lights(zone))),
  );
}

function takesFrom(source: ZoneSource, run: string): boolean {
  switch (source.kind) {
    case 'all':
      return true;
    case 'run':
    case 'range':
      return source.run === run;
    case 'stepped':
    case 'reversed':
      return takesFrom(source.of, run);
    case 'union':
    case 'twins':
      return source.of.some((part) => takesFrom(part, run));
  }
}
