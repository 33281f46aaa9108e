/** The pattern that a clip names, from the library or of the piece's own. */
import type { LibraryPattern } from '../../../engine/pattern/library.ts';
import type { Clip, ParameterDescription, Piece } from '../../../engine/piece/schema.ts';

export interface KnownPattern {
  readonly title: string;
  /** Own patterns can be edited. */
  readonly own: boolean;
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
  /** What the wearer sees; empty for own patterns. */
  readonly sees: string;
}

export function patternOf(
  clip: Pick<Clip, 'pattern'>,
  piece: Pick<Piece, 'patterns'>,
  library: readonly LibraryPattern[],
): KnownPattern | null {
  const own = piece.patterns.find((pattern) => pattern.name === clip.pattern);
  if (own !== undefined) return { ...own, title: own.name, own: true, sees: '' };
  const found = libraryPattern(clip.pattern, library);
  return found === undefined ? null : { ...found, own: false };
}

/** `millrace/1` by its title, an own pattern by its name. */
export function patternTitle(name: string, library: readonly LibraryPattern[]): string {
  return libraryPattern(name, library)?.title ?? name;
}

function libraryPattern(name: string, library: readonly LibraryPattern[]): LibraryPattern | undefined {
  return library.find((pattern) => `${pattern.name}/${pattern.revision}` === name);
}
