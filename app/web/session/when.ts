/** When something was, as people say it. */

/** `this morning`, `this afternoon`, `this evening`, `yesterday`, else the date: `3 March`, `3 March 2025`. */
export function sinceWords(at: Date, now: Date): string {
  const daysBack = Math.round((midnight(now) - midnight(at)) / 86_400_000);
  if (daysBack <= 0) return partOfDay(at.getHours());
  if (daysBack === 1) return 'yesterday';
  const year = at.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' as const };
  return at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', ...year });
}

function partOfDay(hour: number): string {
  if (hour < 12) return 'this morning';
  return hour < 18 ? 'this afternoon' : 'this evening';
}

function midnight(day: Date): number {
  return new Date(day.getFullYear(), day.getMonth(), day.getDate()).getTime();
}
