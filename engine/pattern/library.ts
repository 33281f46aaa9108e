/** Our patterns: each a source in the pattern language with its description beside it. Shipped revisions never change bits. */
import type { ParameterDescription } from '../piece/schema.ts';
import brazierSource from './library/brazier.glsl';
import brazierAbout from './library/brazier.json';
import dewSource from './library/dew.glsl';
import dewAbout from './library/dew.json';
import millraceSource from './library/millrace.glsl';
import millraceAbout from './library/millrace.json';
import mistSource from './library/mist.glsl';
import mistAbout from './library/mist.json';
import processionSource from './library/procession.glsl';
import processionAbout from './library/procession.json';
import raindropSource from './library/raindrop.glsl';
import raindropAbout from './library/raindrop.json';
import ribbonSource from './library/ribbon.glsl';
import ribbonAbout from './library/ribbon.json';
import sleeperSource from './library/sleeper.glsl';
import sleeperAbout from './library/sleeper.json';
import stillSource from './library/still.glsl';
import stillAbout from './library/still.json';
import tideSource from './library/tide.glsl';
import tideAbout from './library/tide.json';
import wakeSource from './library/wake.glsl';
import wakeAbout from './library/wake.json';
import windroseSource from './library/windrose.glsl';
import windroseAbout from './library/windrose.json';

export interface LibraryPattern {
  readonly name: string;
  readonly revision: number;
  readonly title: string;
  /** What the wearer and those around see, in one sentence. */
  readonly sees: string;
  readonly keywords: readonly string[];
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

interface About {
  readonly title: string;
  readonly sees: string;
  readonly keywords: readonly string[];
  /** Checked against the schema by the tests: JSON carries no literal types. */
  readonly parameters: readonly unknown[];
}

function pattern(name: string, revision: number, about: About, source: string): LibraryPattern {
  return { name, revision, ...about, source, parameters: about.parameters as ParameterDescription[] };
}

/** Quiet ones first, then what moves, then what plays by chance. */
export const libraryPatterns: readonly LibraryPattern[] = [
  pattern('still', 1, stillAbout, stillSource),
  pattern('sleeper', 1, sleeperAbout, sleeperSource),
  pattern('ribbon', 1, ribbonAbout, ribbonSource),
  pattern('millrace', 1, millraceAbout, millraceSource),
  pattern('windrose', 1, windroseAbout, windroseSource),
  pattern('wake', 1, wakeAbout, wakeSource),
  pattern('procession', 1, processionAbout, processionSource),
  pattern('tide', 1, tideAbout, tideSource),
  pattern('dew', 1, dewAbout, dewSource),
  pattern('brazier', 1, brazierAbout, brazierSource),
  pattern('mist', 1, mistAbout, mistSource),
  pattern('raindrop', 1, raindropAbout, raindropSource),
];

/** `wake/1`: the name and revision by which a piece refers to a pattern. */
export const referenceOf = ({ name, revision }: LibraryPattern): string => `${name}/${revision}`;

export function findLibraryPattern(reference: string): LibraryPattern | undefined {
  return libraryPatterns.find((one) => referenceOf(one) === reference);
}
