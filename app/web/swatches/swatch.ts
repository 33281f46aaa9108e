/** What lies in the swatch book: all patterns there are, in groups, and how words find them. */
import { type LibraryPattern, referenceOf } from '../../../engine/pattern/library.ts';
import type { ParameterDescription, PatternDefinition, Piece } from '../../../engine/piece/schema.ts';

export interface Swatch {
  /** As clips name it: `tide/1`, or a pattern of the piece's own. */
  readonly pattern: string;
  readonly title: string;
  /** One line of what one sees. */
  readonly sees: string;
  readonly keywords: readonly string[];
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
  /** Null for a pattern of the library. */
  readonly own: PatternDefinition | null;
}

export interface SwatchGroup {
  readonly title: string;
  readonly swatches: readonly Swatch[];
}

/** The piece's own patterns first, as they were made for it. */
export function swatchesOf(
  { patterns }: Pick<Piece, 'patterns'>,
  library: readonly LibraryPattern[],
): Swatch[] {
  const own = patterns.map((pattern) => ({
    pattern: pattern.name,
    title: pattern.name,
    sees: firstComment(pattern.source) ?? 'Made for this piece.',
    keywords: [],
    source: pattern.source,
    parameters: pattern.parameters,
    own: pattern,
  }));
  const known = library.map((pattern) => ({ ...pattern, pattern: referenceOf(pattern), own: null }));
  return [...own, ...known];
}

/** The first sentence of the comment that a source begins with. */
function firstComment(source: string): string | undefined {
  return /^\s*\/\/\s*(.+?[.!?](?=\s|$)|.+)/.exec(source)?.[1]?.trim();
}

const groups = {
  own: 'Your own',
  still: 'At rest',
  moving: 'In motion',
  chance: 'By chance',
} as const;
type GroupName = keyof typeof groups;

/** In groups by what they do; groups without swatches are left out. */
export function grouped(swatches: readonly Swatch[]): SwatchGroup[] {
  const names = Object.keys(groups) as GroupName[];
  return names
    .map((name) => ({
      title: groups[name],
      swatches: swatches.filter((swatch) => groupOf(swatch) === name),
    }))
    .filter((group) => group.swatches.length > 0);
}

/** Words of the language that make light change by itself, and those that bring in chance. */
const movesBy = /\b(?:time|turn)\b/;
const chanceBy = /\b(?:seed|hash|noise)\b/;

function groupOf({ own, source }: Swatch): GroupName {
  if (own !== null) return 'own';
  const code = source.replace(/\/\/.*$/gm, '').replace(/\/\*[\s\S]*?\*\//g, '');
  if (chanceBy.test(code)) return 'chance';
  return movesBy.test(code) ? 'moving' : 'still';
}

/** Those of which each word begins some word: of the title, of what one sees, of keywords, of what can be set. */
export function searched(swatches: readonly Swatch[], text: string): Swatch[] {
  const asked = wordsOf(text);
  return swatches.filter((swatch) => {
    const words = wordsOf(
      [
        swatch.title,
        swatch.sees,
        ...swatch.keywords,
        ...swatch.parameters.map(({ label }) => label),
        groups[groupOf(swatch)],
      ].join(' '),
    );
    return asked.every((word) => words.some((known) => known.startsWith(word)));
  });
}

/** In lower case and without marks on letters. */
function wordsOf(text: string): string[] {
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  return plain.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
}
