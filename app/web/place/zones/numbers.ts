/** Positions of a run as a hand writes them: `0-7, 12, 20-16`. */
import type { ZoneSource } from '../../../../engine/piece/schema.ts';

export type ReadNumbers =
  | { readonly ranges: readonly (readonly [first: number, last: number])[]; readonly fault?: undefined }
  | { readonly ranges?: undefined; readonly fault: string };

/** @param count pixels of the run; positions go from 0 to count - 1, and a range may run backwards */
export function readNumbers(text: string, count: number): ReadNumbers {
  const words = text.split(/[,;\s]+/).filter((word) => word !== '');
  if (words.length === 0) return { fault: 'Write numbers such as 0-7, 12.' };
  const ranges: [number, number][] = [];
  for (const word of words) {
    const [, first, last = first] = /^(\d{1,5})(?:-(\d{1,5}))?$/.exec(word) ?? [];
    if (first === undefined) return { fault: `"${word}" is no number and no range such as 0-7.` };
    const range: [number, number] = [Number(first), Number(last)];
    if (Math.max(...range) >= count) return { fault: `The run ends at ${count - 1}.` };
    ranges.push(range);
  }
  return { ranges };
}

export function sourcesOfRanges(run: string, ranges: readonly (readonly [number, number])[]): ZoneSource[] {
  return ranges.map(([first, last]) => ({ kind: 'range', run, first, last }));
}
