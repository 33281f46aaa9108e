/** Finds what a maker probably meant. */

/** Comparing is quadratic in the length, and a name has 40 characters. */
const longestCompared = 60;

/** The candidate nearest to a mistyped word, if one is near enough to be worth naming. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.floor(Math.min(word.length, longestCompared) / 3) + 1;
  for (const candidate of candidates) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase(), bestDistance);
    if (distance < bestDistance || (distance === bestDistance && best === undefined)) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Letters put in, left out, exchanged or swapped with the neighbour; `limit + 1` where it is more than `limit`. */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit || a.length > longestCompared || b.length > longestCompared) {
    return limit + 1;
  }
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, beforeLast[j - 2]! + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return Math.min(last[b.length]!, limit + 1);
}

/** Advice for a name that leads nowhere. */
export function meantInstead(word: string, candidates: Iterable<string>): string {
  const known = [...candidates];
  const meant = nearest(word, known);
  if (meant !== undefined) return `Did you mean "${meant}"?`;
  if (known.length === 0) return 'There is none to choose from yet.';
  const listed = known.slice(0, 12).map((name) => `"${name}"`);
  return `Choose one of ${listed.join(', ')}${known.length > 12 ? ' and others' : ''}.`;
}
