/** Reading what stands after a command's name. */
import { parseArgs } from 'node:util';
import { type ChipName, chipNames } from '../../engine/parts/chips.ts';
import { nearest } from '../../engine/piece/nearest.ts';
import { wrongUsage } from './failure.ts';

type Kinds = Readonly<Record<string, 'text' | 'yes-no'>>;

export type Options<K extends Kinds> = {
  readonly [Name in keyof K]: K[Name] extends 'text' ? string | undefined : boolean;
};

export interface Words<K extends Kinds> {
  readonly options: Options<K>;
  /** What belongs to no option: files. */
  readonly rest: readonly string[];
}

/** Options and files in any order; every command knows `--json`. */
export function readWords<K extends Kinds>(
  words: readonly string[],
  kinds: K,
): Words<K & { json: 'yes-no' }> {
  const known = Object.entries({ ...kinds, json: 'yes-no' } as Kinds);
  const config = known.map(
    ([name, kind]) => [name, { type: kind === 'text' ? 'string' : 'boolean' }] as const,
  );
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      options: Object.fromEntries(config),
      allowPositionals: true,
    });
    const options = known.map(([name, kind]) => [
      name,
      values[name] ?? (kind === 'text' ? undefined : false),
    ]);
    return { options: Object.fromEntries(options), rest: positionals };
  } catch (problem) {
    const [message] = (problem as Error).message.split('. ');
    throw wrongUsage('option-wrong', `${message}.`, 'See the usage with --help.');
  }
}

/** The only file that a command takes. */
export function oneFile(rest: readonly string[]): string {
  const [file, another] = rest;
  if (file === undefined)
    throw wrongUsage('file-missing', 'No piece file was named.', 'Name a .piece.json file.');
  if (another !== undefined) {
    throw wrongUsage('file-unexpected', `"${another}" is one file too many.`, 'Name one piece at a time.');
  }
  return file;
}

export function someFiles(rest: readonly string[]): readonly string[] {
  if (rest.length > 0) return rest;
  throw wrongUsage('file-missing', 'No piece file was named.', 'Name one .piece.json file or several.');
}

export function needed(value: string | undefined, option: string, example: string): string {
  if (value !== undefined) return value;
  throw wrongUsage('option-missing', `The option --${option} is missing.`, `Add it, for example ${example}.`);
}

export function wholeNumber(text: string, option: string, min: number, max: number): number {
  const value = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= min && value <= max) return value;
  throw wrongUsage(
    'number-wrong',
    `--${option} has "${text}", which is no whole number from ${min} to ${max}.`,
    'Write it in digits, without a unit.',
  );
}

export function chipNamed(text: string): ChipName {
  const chip = chipNames.find((name) => name === text);
  if (chip !== undefined) return chip;
  throw wrongUsage(
    'unknown-board',
    `There is no board "${text}".`,
    `The boards are ${chipNames.join(', ')}.`,
  );
}

/** Index of the named thing, or a failure that tells what there is. */
export function indexNamed(kind: string, name: string, things: readonly { readonly name: string }[]): number {
  const index = things.findIndex((thing) => thing.name === name.normalize('NFC'));
  if (index >= 0) return index;
  const names = things.map((thing) => thing.name);
  const meant = nearest(name, names);
  throw wrongUsage(
    `unknown-${kind}`,
    `There is no ${kind} "${name}" among ${names.map((known) => `"${known}"`).join(', ')}.`,
    meant === undefined ? 'Use a name exactly as it stands there.' : `Did you mean "${meant}"?`,
  );
}
