/** Turns what zod says about a piece into diagnostics that a maker can act on. */
import type { core } from 'zod';
import { type Diagnostic, pathText } from '../diagnostic.ts';
import { meantInstead, nearest } from './nearest.ts';
import { isRuleName, rules } from './rules.ts';
import { clipped, listed, shown } from './wording.ts';

type Issue = core.$ZodIssue;
type UnionIssue = Extract<Issue, { code: 'invalid_union' }>;
type Keys = readonly PropertyKey[];

/**
 * The text that zod gives to each issue, as data for `explain`: nothing, or the names that are known
 * where an unknown one stands. A rule of the schema has its own text, the rule's name.
 */
export function issueText(issue: core.$ZodRawIssue): string {
  if (issue.code !== 'unrecognized_keys') return '';
  const { shape } = (issue.inst as core.$ZodObject)._zod.def;
  return Object.keys(shape).join(' ');
}

/**
 * What an issue means, mostly in one diagnostic: of all the ways to miss a union, the nearest miss.
 * @param outer where the value that was parsed lies in the piece
 */
export function explain(issue: Issue, outer: Keys = []): Diagnostic[] {
  if (isAboutSafety(issue)) return [];
  const keys = [...outer, ...issue.path];
  if (isRuleName(issue.message)) {
    const { message, advice } = rules[issue.message];
    return [error(issue.message, keys, message, advice)];
  }
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(key, issue.message.split(' '), keys));
    case 'invalid_union':
      return explainUnion(issue, keys);
    case 'invalid_type':
      return [wrongKind(issue.input, [kindOf(issue.expected)], keys)];
    case 'invalid_value':
      return [wrongWord(issue.input, issue.values.map(String), keys)];
    case 'too_big':
      return [
        wrongSize(
          issue.input,
          `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`,
          keys,
        ),
      ];
    case 'too_small':
      return [
        wrongSize(
          issue.input,
          `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`,
          keys,
        ),
      ];
    default:
      return [
        error(
          'wrong-form',
          keys,
          `Here stands ${shown(issue.input)}, which does not fit.`,
          'See the schema.',
        ),
      ];
  }
}

/** zod also bounds whole numbers by 2^53; ours all have closer bounds, which are reported as well. */
function isAboutSafety(issue: Issue): boolean {
  if (issue.code === 'too_big') return issue.maximum === Number.MAX_SAFE_INTEGER;
  return issue.code === 'too_small' && issue.minimum === Number.MIN_SAFE_INTEGER;
}

function unknownKey(key: string, known: readonly string[], keys: Keys): Diagnostic {
  const meant = nearest(key, known);
  const advice = meant === undefined ? `Remove it; known are ${listed(known)}.` : `Did you mean "${meant}"?`;
  return error('unknown-key', [...keys, key], `There is no field "${clipped(key)}" here.`, advice);
}

interface Kind {
  readonly name: string;
  readonly advice: string;
}

const inBraces = { name: 'an object', advice: 'Put its fields in braces: { ... }.' };
const inBrackets = { name: 'a list', advice: 'Put its values in square brackets: [ ... ].' };
const kinds: Readonly<Record<string, Kind>> = {
  number: { name: 'a number', advice: 'Write a number without quotes.' },
  int: { name: 'a whole number', advice: 'Write a whole number without quotes.' },
  string: { name: 'text', advice: 'Write text in double quotes.' },
  boolean: { name: 'true or false', advice: 'Write true or false without quotes.' },
  array: inBrackets,
  tuple: inBrackets,
  object: inBraces,
  record: inBraces,
};

function kindOf(expected: string): Kind {
  return kinds[expected] ?? { name: expected, advice: 'See the schema.' };
}

function wrongKind(input: unknown, expected: readonly Kind[], keys: Keys): Diagnostic {
  const names = [...new Set(expected.map(({ name }) => name))].join(', or ');
  if (input === undefined) return missing(keys, names);
  const advice = expected.length === 1 ? expected[0]!.advice : `Write ${names}.`;
  return error('wrong-type', keys, `Here stands ${shown(input)}, but ${names} is expected.`, advice);
}

function wrongWord(input: unknown, words: readonly string[], keys: Keys): Diagnostic {
  if (input === undefined) return missing(keys, `one of ${listed(words)}`);
  const advice = meantInstead(typeof input === 'string' ? input : '', words);
  return error('unknown-word', keys, `Here stands ${shown(input)}, which is not known.`, advice);
}

function missing(keys: Keys, names: string): Diagnostic {
  const last = keys.at(-1);
  const what = typeof last === 'string' ? `The field "${last}"` : 'A value';
  return error('missing', keys, `${what} is missing.`, `Add it: ${names}.`);
}

function wrongSize(input: unknown, wanted: string, keys: Keys): Diagnostic {
  if (typeof input === 'number') {
    return error(
      'out-of-range',
      keys,
      `The number ${input} is out of range.`,
      `Choose a number of ${wanted}.`,
    );
  }
  if (typeof input === 'string') {
    const message = `This text has ${input.length} characters, but ${wanted} are allowed.`;
    return error('wrong-length', keys, message, 'Shorten it.');
  }
  const length = Array.isArray(input) ? input.length : 0;
  const message = `This list has ${length} entries, but ${wanted} are expected.`;
  return error('wrong-length', keys, message, 'Add what is missing or take out what is too much.');
}

function explainUnion(issue: UnionIssue, keys: Keys): Diagnostic[] {
  if ('options' in issue && issue.discriminator !== undefined) {
    const told = (issue.input as Record<string, unknown>)[issue.discriminator];
    return [wrongWord(told, issue.options.map(String), keys)];
  }
  const misses = issue.errors.map((issues) => ({ issues, fit: Math.min(...issues.map(fitOf)) }));
  const best = Math.max(...misses.map(({ fit }) => fit));
  if (best === 0)
    return [
      wrongKind(
        issue.input,
        issue.errors.flatMap((issues) => kindsWanted(issues[0])),
        keys,
      ),
    ];
  const nearMisses = misses.filter(({ fit }) => fit === best).map(({ issues }) => issues);
  const nearest = nearMisses.reduce((a, b) => (b.length < a.length ? b : a));
  return nearest.flatMap((inner) => explain(inner, keys));
}

/** 0 where the value as a whole is of another kind; the deeper an issue lies, the more did fit before it. */
function fitOf(issue: Issue): number {
  const isOtherKind =
    issue.code === 'invalid_type' || (issue.code === 'invalid_value' && typeof issue.input !== 'string');
  return issue.path.length * 2 + (isOtherKind ? 0 : 1);
}

function kindsWanted(issue: Issue | undefined): Kind[] {
  if (issue?.code === 'invalid_type') return [kindOf(issue.expected)];
  return issue?.code === 'invalid_value' ? [{ name: listed(issue.values.map(String)), advice: '' }] : [];
}

function error(code: string, keys: Keys, message: string, advice: string): Diagnostic {
  return { code, severity: 'error', message, advice, path: pathText(keys) };
}
