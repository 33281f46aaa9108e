/** Marks of a time axis. */

const steps = [
  0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800,
].map((seconds) => seconds * 1000);

export interface Mark {
  readonly ms: number;
  readonly text: string;
}

/** Marks from 0 to `lengthMs`, as close as `mostMarks` allows, at steps people count in. */
export function timeMarks(lengthMs: number, mostMarks: number): Mark[] {
  const step = steps.find((candidate) => lengthMs / candidate <= mostMarks) ?? steps.at(-1)!;
  const marks: Mark[] = [];
  for (let ms = 0; ms <= lengthMs; ms += step) marks.push({ ms, text: markText(ms, step) });
  return marks;
}

function markText(ms: number, step: number): string {
  const seconds = ms / 1000;
  if (step >= 60_000) return seconds >= 3600 ? hours(seconds) : `${seconds / 60} min`;
  if (seconds >= 60)
    return `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, '0')}`;
  const digits = step >= 1000 ? 0 : step >= 100 ? 1 : 2;
  return `${seconds.toFixed(digits)} s`;
}

function hours(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')} h`;
}
