/** Names have at most 40 characters (`piece/schema/values.ts`); these leave room for a number. */
const longest = 36;

/** The wanted name, or the first of `wanted 2`, `wanted 3` and so on that is free. */
export function freeName(wanted: string, taken: Iterable<string>): string {
  const names = new Set(taken);
  if (!names.has(wanted) && [...wanted].length <= longest) return wanted;
  const stem = [...wanted.replace(/ \d+$/, '')].slice(0, longest).join('').trim();
  for (let count = names.has(stem) ? 2 : 1; ; count++) {
    const name = count === 1 ? stem : `${stem} ${count}`;
    if (!names.has(name)) return name;
  }
}
