/** Foreign text and values in the middle of our sentences: short, and harmless on any screen. */

export function clipped(text: string): string {
  const visible = text.slice(0, 80).replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '?');
  return visible.length <= 40 ? visible : `${visible.slice(0, 39)}…`;
}

/** A value of a piece file in a few words. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${clipped(value)}"`;
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'an object' : clipped(String(value));
}

export function listed(words: readonly string[]): string {
  return words.map((word) => `"${word}"`).join(', ');
}
