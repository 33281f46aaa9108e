/** Names have at most 40 characters (`piece/schema/values.ts`); these leave room for a number. */
const longest = 36;

/** The wanted name if it is free and short enough; else shortened, or counting on: `rim 2`, `rim 3`. */
export function freeName(wanted: string, taken: Iterable<string>): string {
  const names = new Set(taken);
  const [, words, number] = /^(.*?)(?: (\d{1,3}))?$/su.exec(wanted)!;
  const stem = [...words!].slice(0, longest).join('').trim();
  const isShort = stem === words;
  const wish = isShort ? wanted : stem;
  if (!names.has(wish)) return wish;
  for (let next = number !== undefined && isShort ? Number(number) + 1 : 2; ; next++) {
    const name = `${stem} ${next}`;
    if (!names.has(name)) return name;
  }
}
