/** Turns what zod says about a piece into diagnostics that a maker can act on. */
import type { core } from 'zod';
import { pathText } from '../diagnostic.ts';
import type { Findings } from './findings.ts';
import { nearest } from './nearest.ts';
import { isRuleName, rules } from './rules.ts';
import { clipped, listed, shown } from './wording.ts';

type Issue = core.$ZodIssue;

/**
 * The text that zod gives to each issue, as data for `reportIssues`: nothing, or the names that are
 * known where an unknown one stands. A rule of the schema has its own text, the rule's name.
 */
export function wording(issue: core.$ZodRawIssue): string {
  if (issue.code !== 'unrecognized_keys') return '';
  const { shape } = (issue.inst as core.$ZodObject)._zod.def;
  return Object.keys(shape).join(' ');
}

/** Adds one diagnostic, or a few, for each issue. */
export function reportIssues(issues: readonly Issue[], findings: Findings): void {
  for (const issue of issues) reportIssue(issue, [], findings);
}

function reportIssue(issue: Issue, outer: readonly PropertyKey[], findings: Findings): void {
  const keys = [...outer, ...issue.path];
  const path = pathText(keys);
  if (isRuleName(issue.message)) {
    const { message, advice } = rules[issue.message];
    findings.error(issue.message, path, message, advice);
    return;
  }
  switch (issue.code) {
    case 'unrecognized_keys':
      for (const key of issue.keys) reportUnknownKey(key, issue.message.split(' '), keys, findings);
      return;
    case 'invalid_union':
      reportUnion(issue, keys, findings);
      return;
    case 'invalid_type':
      reportKind(issue.expected, issue.input, keys, findings);
      return;
    case 'invalid_value':
      reportWord(issue.input, issue.values.map(String), keys, findings);
      return;
    case 'too_big':
      reportSize(
        issue.origin,
        'at most',
        Number(issue.maximum),
        issue.inclusive,
        issue.input,
        path,
        findings,
      );
      return;
    case 'too_small':
      reportSize(
        issue.origin,
        'at least',
        Number(issue.minimum),
        issue.inclusive,
        issue.input,
        path,
        findings,
      );
      return;
    default:
      findings.error(
        'wrong-form',
        path,
        `This value does not fit: ${shown(issue.input)}.`,
        'See the schema of the piece file.',
      );
  }
}

function reportUnknownKey(
  key: string,
  known: readonly string[],
  keys: readonly PropertyKey[],
  findings: Findings,
): void {
  findings.error('unknown-key', pathText([...keys, key]), `There is no field "${clipped(key)}" here.`, () => {
    const meant = nearest(key, known);
    return meant === undefined ? `Remove it; known are ${listed(known)}.` : `Did you mean "${meant}"?`;
  });
}

const kinds: Readonly<Record<string, { readonly name: string; readonly advice: string }>> = {
  number: { name: 'a number', advice: 'Write a number without quotes.' },
  int: { name: 'a whole number', advice: 'Write a whole number without quotes.' },
  string: { name: 'text', advice: 'Write text in double quotes.' },
  boolean: { name: 'true or false', advice: 'Write true or false without quotes.' },
  array: { name: 'a list', advice: 'Put the values in square brackets: [ ... ].' },
  tuple: { name: 'a list', advice: 'Put the values in square brackets: [ ... ].' },
  object: { name: 'an object', advice: 'Put the fields in braces: { ... }.' },
  record: { name: 'an object', advice: 'Put the fields in braces: { ... }.' },
};

function reportKind(
  expected: string,
  input: unknown,
  keys: readonly PropertyKey[],
  findings: Findings,
): void {
  const kind = kinds[expected] ?? { name: expected, advice: 'See the schema of the piece file.' };
  if (input === undefined) {
    reportMissing(keys, `It is ${kind.name}.`, findings);
    return;
  }
  const message = `Here stands ${shown(input)}, but ${kind.name} is expected.`;
  findings.error('wrong-type', pathText(keys), message, kind.advice);
}

function reportMissing(keys: readonly PropertyKey[], hint: string, findings: Findings): void {
  const last = keys.at(-1);
  const name = typeof last === 'string' ? `The field "${last}"` : 'A value';
  findings.error('missing', pathText(keys), `${name} is missing.`, `Add it. ${hint}`.replace('. It', ': it'));
}

function reportWord(
  input: unknown,
  words: readonly string[],
  keys: readonly PropertyKey[],
  findings: Findings,
): void {
  if (input === undefined) {
    reportMissing(keys, `It is one of ${listed(words)}.`, findings);
    return;
  }
  const message = `The word ${shown(input)} is not known here.`;
  findings.error('unknown-word', pathText(keys), message, () => {
    const meant = typeof input === 'string' ? nearest(input, words) : undefined;
    return meant === undefined ? `Choose one of ${listed(words)}.` : `Did you mean "${meant}"?`;
  });
}

function reportSize(
  origin: string,
  bound: 'at most' | 'at least',
  figure: number,
  inclusive: boolean | undefined,
  input: unknown,
  path: string,
  findings: Findings,
): void {
  const limit =
    inclusive === false
      ? bound === 'at most'
        ? `less than ${figure}`
        : `more than ${figure}`
      : `${bound} ${figure}`;
  if (origin === 'array') {
    const length = Array.isArray(input) ? input.length : 0;
    const code = bound === 'at most' ? 'too-long' : 'too-short';
    const entries = figure === 1 ? 'entry' : 'entries';
    findings.error(
      code,
      path,
      `This list has ${length} entries, but ${limit} ${entries} fit here.`,
      code === 'too-long' ? 'Take some out.' : 'Add what is missing.',
    );
  } else if (origin === 'string') {
    const length = typeof input === 'string' ? input.length : 0;
    findings.error(
      'too-long',
      path,
      `This text has ${length} characters, but ${limit} are allowed.`,
      'Shorten it.',
    );
  } else {
    findings.error(
      'out-of-range',
      path,
      `The number ${shown(input)} is out of range.`,
      `Choose a number of ${limit}.`,
    );
  }
}

/** Of all the ways in which a union was missed, the one that came nearest to fitting. */
function reportUnion(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  keys: readonly PropertyKey[],
  findings: Findings,
): void {
  if ('options' in issue && typeof issue.discriminator === 'string') {
    const input = issue.input as Record<string, unknown>;
    reportWord(input[issue.discriminator], issue.options.map(String), keys, findings);
    return;
  }
  const misses = issue.errors.map((issues) => ({ issues, fit: Math.min(...issues.map(fitOf)) }));
  const best = Math.max(...misses.map(({ fit }) => fit));
  if (best === 0) {
    reportKinds(issue, keys, findings);
    return;
  }
  const fewest = misses
    .filter(({ fit }) => fit === best)
    .reduce((a, b) => (b.issues.length < a.issues.length ? b : a));
  for (const inner of fewest.issues) reportIssue(inner, keys, findings);
}

/** 0 where the value as a whole is of another kind; the deeper an issue lies, the more fitted before it. */
function fitOf(issue: Issue): number {
  const isOfAnotherKind =
    issue.code === 'invalid_type' || (issue.code === 'invalid_value' && typeof issue.input !== 'string');
  return issue.path.length * 2 + (isOfAnotherKind ? 0 : 1);
}

function reportKinds(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  keys: readonly PropertyKey[],
  findings: Findings,
): void {
  const expected = issue.errors.map(([first]) => {
    if (first?.code === 'invalid_value') return first.values.map((word) => `"${String(word)}"`).join(', ');
    return first?.code === 'invalid_type' ? (kinds[first.expected]?.name ?? first.expected) : '';
  });
  const names = [...new Set(expected)].filter((name) => name !== '').join(', or ');
  if (issue.input === undefined) {
    reportMissing(keys, `It is ${names}.`, findings);
    return;
  }
  findings.error(
    'wrong-type',
    pathText(keys),
    `Here stands ${shown(issue.input)}, which does not fit.`,
    `Write ${names}.`,
  );
}
