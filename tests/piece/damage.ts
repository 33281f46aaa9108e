/** Damages the text of a piece file the way editors, mail and slips of the hand do. Seeded. */

/** Mulberry32: a small generator whose sequence follows from its seed alone. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

type Damage = (text: string, random: () => number) => string;

const below = (random: () => number, limit: number) => Math.floor(random() * limit);
const pick = <T>(random: () => number, list: readonly T[]): T => list[below(random, list.length)]!;

const strange = [
  'null',
  '-1',
  '1e999',
  '-0',
  '0.5',
  '99999999',
  '""',
  '"\\u202e"',
  'true',
  '[]',
  '{}',
  '[[[[]]]]',
];
const letters = ['"', '{', '}', '[', ']', ',', ':', '\\', '\u0000', 'e', '7', '\n', 'ü', '\ud800'];

/** Kinds of damage; the first three break the JSON mostly, the others keep it and break the piece. */
export const damages: Readonly<Record<string, Damage>> = {
  letter(text, random) {
    const at = below(random, text.length);
    return text.slice(0, at) + pick(random, letters) + text.slice(at + below(random, 2));
  },
  cut: (text, random) => text.slice(0, below(random, text.length)),
  gap(text, random) {
    const at = below(random, text.length);
    return text.slice(0, at) + text.slice(at + 1 + below(random, 200));
  },
  number: (text, random) => replaceOne(text, /-?\d+(\.\d+)?(?=[\s,\]}])/g, pick(random, strange), random),
  text: (text, random) => replaceOne(text, /"[^"]*"(?=[\s,\]}])/g, pick(random, strange), random),
  key: (text, random) => replaceOne(text, /"\w+"(?=:)/g, '"nmae"', random),
  forbidden: (text, random) => replaceOne(text, /"\w+"(?=:)/g, '"__proto__"', random),
  swap(text, random) {
    const keys = text.match(/"\w+"(?=:)/g) ?? [];
    return replaceOne(text, /"\w+"(?=:)/g, pick(random, keys), random);
  },
  branch(text, random) {
    const parts = text.match(/\{[^{}[\]]*\}/g) ?? [];
    return replaceOne(text, /\{[^{}[\]]*\}/g, pick(random, parts), random);
  },
};

function replaceOne(text: string, pattern: RegExp, put: string, random: () => number): string {
  const matches = [...text.matchAll(pattern)];
  if (matches.length === 0) return text;
  const match = pick(random, matches);
  return text.slice(0, match.index) + put + text.slice(match.index + match[0].length);
}

/** One damage of any kind, at times up to three. */
export function damaged(text: string, random: () => number): string {
  let result = text;
  for (let times = pick(random, [1, 1, 1, 2, 3]); times > 0; times--) {
    result = pick(random, Object.values(damages))(result, random);
  }
  return result;
}
